#pragma once

#include "core/exchange/evidence/field.h"
#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace loadwarden::evidence_format {

/// How many characters a text has where that is too few or too many for a rule.
[[nodiscard]] inline std::optional<std::size_t> wrongLengthIn(std::string_view text,
                                                              const TextRule& rule) noexcept
{
    // Characters take one to four bytes each, so most lengths need no counting.
    if (text.size() >= rule.least && text.size() <= rule.most) {
        return std::nullopt;
    }
    const std::size_t length = utf8::characterCount(text);
    if (length >= rule.least && length <= rule.most) {
        return std::nullopt;
    }
    return length;
}

/// The first character of a text that a rule does not take.
[[nodiscard]] inline std::optional<Unseen> wrongCharacterIn(std::string_view text,
                                                            const TextRule& rule) noexcept
{
    return rule.isFree ? findControl(text) : findUnseen(text);
}

} // namespace loadwarden::evidence_format
