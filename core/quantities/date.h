#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// A calendar date without a zone: days since 1970-01-01, proleptic Gregorian.
struct Date {
    std::int32_t days = 0;

    friend constexpr auto operator<=>(Date, Date) = default;

    friend constexpr Date operator+(Date a, std::int32_t n) noexcept { return {a.days + n}; }

    friend constexpr Date operator-(Date a, std::int32_t n) noexcept { return {a.days - n}; }
};

/// Reads "2031-03-04"; years 2000 to 2099; nullopt when malformed or when there is no such day.
std::optional<Date> parseDate(std::string_view text) noexcept;

/// "2031-03-04". Meant for the years 0 to 9999.
std::string formatDate(Date date);

} // namespace loadwarden
