#pragma once

#include "core/cycle/printout.h"
#include "core/cycle/specification.h"
#include "core/quantities/word.h"

namespace loadwarden {

/// In the order of Parameter.
inline constexpr auto parameterWords = [] {
    std::array<Word<Parameter>, parameterCount> words{};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto parameter = static_cast<Parameter>(i);
        words[i] = {textOf(parameter), parameter};
    }
    return words;
}();

/// In the order of Unit.
inline constexpr auto unitWords = [] {
    std::array<Word<Unit>, unitCount> words{};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto unit = static_cast<Unit>(i);
        words[i] = {textOf(unit), unit};
    }
    return words;
}();

inline constexpr Word<Purpose> purposeWords[] = {
    {"routine", Purpose::routine}, {"immediate-use", Purpose::immediateUse},
    {"warm-up", Purpose::warmUp},  {"bowie-dick", Purpose::bowieDick},
    {"leak", Purpose::leak},       {"qualification", Purpose::qualification},
};

/// In the order of PrintoutField.
inline constexpr auto printoutFieldWords = [] {
    std::array<Word<PrintoutField>, printoutFieldCount> words{};
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto field = static_cast<PrintoutField>(i);
        words[i] = {textOf(field), field};
    }
    return words;
}();

inline constexpr Word<PrintoutAnswer> printoutAnswerWords[] = {
    {"record-right", PrintoutAnswer::recordRight},
    {"wrong-cycle", PrintoutAnswer::wrongCycle},
    {"wrong-sterilizer", PrintoutAnswer::wrongSterilizer},
};

} // namespace loadwarden
