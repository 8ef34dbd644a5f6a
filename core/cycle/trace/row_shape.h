#pragma once

#include "core/cycle/trace/text_lines.h"
#include "core/cycle/trace/text_values.h"

#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// A line's field; empty where it has none there.
[[nodiscard]] std::string_view fieldAt(const LineCutter& line, std::size_t column) noexcept;

[[nodiscard]] bool hasFigure(std::string_view text) noexcept;

/// The time of a line by the mapping.
[[nodiscard]] std::optional<WrittenTime> timeOf(const LineCutter& line,
                                                const TraceMapping& mapping) noexcept;

/// Whether a line holds no sample: no number stands where the mapping has a channel, and it has no
/// time, or words in the place of fields that are missing.
[[nodiscard]] bool isFreeLine(const LineCutter& line, const TraceMapping& mapping) noexcept;

/// A cycle counter that a free line states, and the field in which it stands, from 0.
struct LabelledCounter {
    std::string text;
    std::size_t column = 0;
};

/// The counter behind the mapping's label, in the same field ("Cycle no: 7") or in the next.
[[nodiscard]] std::optional<LabelledCounter> labelledCounter(const LineCutter& line,
                                                             const TraceMapping& mapping);

} // namespace loadwarden
