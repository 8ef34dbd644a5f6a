#pragma once

#include "core/cycle/quantity.h"
#include "core/exchange/evidence/bind.h"

namespace loadwarden::evidence_format {

inline constexpr auto parameterWords = [] {
    std::array<Word<Parameter>, parameterCount> words{};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto parameter = static_cast<Parameter>(i);
        words[i] = {textOf(parameter), parameter};
    }
    return words;
}();

} // namespace loadwarden::evidence_format
