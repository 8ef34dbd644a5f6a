#pragma once

#include "core/journal/envelope.h"

#include <optional>
#include <string_view>

namespace loadwarden::cli {

/// A moment with its offset as it is typed, "2031-03-04T07:14-06:00"; nullopt for anything else.
[[nodiscard]] inline std::optional<JournalTime> typedTime(std::string_view text)
{
    const auto written = parseWrittenInstant(text);
    if (!written) {
        return std::nullopt;
    }
    const Duration offset = written->offset.value_or(Duration{});
    return JournalTime{written->moment, static_cast<std::int32_t>(offset.ms / 60'000)};
}

} // namespace loadwarden::cli
