#pragma once

#include "core/cycle/trace/trace_mapping.h"

#include <cstdint>
#include <optional>
#include <string_view>

namespace loadwarden {

/// A decimal number with that mark and, if any, a sign and an exponent of ten; no other text, no
/// marks between thousands, no infinity. nullopt: it is none, or none that a double holds.
[[nodiscard]] std::optional<double> readNumber(std::string_view text, DecimalMark mark) noexcept;

/// Whether a field says that there is no value: it is empty, made of dashes, or "nan", "n/a", "na",
/// "null" in letters of any size.
[[nodiscard]] bool saysNoValue(std::string_view text) noexcept;

/// A time as it is written, without a zone.
struct WrittenTime {
    std::int64_t day = 0; ///< since 1970-01-01, where the form has a date
    double seconds = 0;   ///< since midnight, or since the recorder began
};

/// Reads a time in that form. `date` is the text of the date's own column, where there is one; an
/// offset from UTC is subtracted. nullopt: it is no such time.
[[nodiscard]] std::optional<WrittenTime> readTime(std::string_view text, std::string_view date,
                                                  const TimeColumn& form,
                                                  DecimalMark mark) noexcept;

/// A date alone in that order: numbers, or the month as an English word of three letters or more;
/// years of four figures from 2000 to 2099 or of two. nullopt: it is none, or there is no such day.
[[nodiscard]] std::optional<std::int64_t> readDay(std::string_view text, DateOrder order) noexcept;

} // namespace loadwarden
