#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// A length of time in milliseconds; may be negative. Sums are not checked: what parseInstant() and
/// parseDecimal() let through is far from overflow.
struct Duration {
    std::int64_t ms = 0;

    static constexpr Duration milliseconds(std::int64_t n) noexcept { return {n}; }

    static constexpr Duration seconds(std::int64_t n) noexcept { return {n * 1000}; }

    static constexpr Duration minutes(std::int64_t n) noexcept { return {n * 60'000}; }

    static constexpr Duration hours(std::int64_t n) noexcept { return {n * 3'600'000}; }

    friend constexpr auto operator<=>(Duration, Duration) = default;

    friend constexpr Duration operator+(Duration a, Duration b) noexcept { return {a.ms + b.ms}; }

    friend constexpr Duration operator-(Duration a, Duration b) noexcept { return {a.ms - b.ms}; }

    friend constexpr Duration operator-(Duration a) noexcept { return {-a.ms}; }
};

/// The length without its sign.
constexpr Duration magnitude(Duration d) noexcept
{
    return d < Duration{} ? -d : d;
}

/// A moment: milliseconds of UTC since 1970-01-01T00:00Z, leap seconds not counted.
struct Instant {
    std::int64_t ms = 0;

    friend constexpr auto operator<=>(Instant, Instant) = default;

    friend constexpr Instant operator+(Instant a, Duration d) noexcept { return {a.ms + d.ms}; }

    friend constexpr Instant operator-(Instant a, Duration d) noexcept { return {a.ms - d.ms}; }

    friend constexpr Duration operator-(Instant a, Instant b) noexcept { return {a.ms - b.ms}; }
};

/// The first and the last moment of the formats: the years 2000 to 2099 of UTC, so that every moment
/// can be written with Z.
inline constexpr Instant firstMoment{946'684'800'000};
inline constexpr Instant lastMoment{4'102'444'800'000 - 1};

/// The UTC minute in which the moment lies, counted from 1970; rounds down, also before 1970.
constexpr std::int64_t minuteOf(Instant t) noexcept
{
    const std::int64_t minute = t.ms / 60'000;
    return t.ms % 60'000 < 0 ? minute - 1 : minute;
}

/// Whether a moment is not before another, both cut to the minute. Mostly without a division.
constexpr bool isFromMinuteOn(Instant t, Instant from) noexcept
{
    return t >= from || minuteOf(t) == minuteOf(from);
}

/// Whether a moment lies at or after the end of a cycle, both cut to the minute: what is typed to
/// the minute is not too early by the seconds of the end (RULES.md, 2, from the end on).
constexpr bool isFromEndOn(Instant t, Instant end) noexcept
{
    return isFromMinuteOn(t, end);
}

/// Reads "2031-03-04T07:14-06:00", with ":SS" and ".m", ".mm" or ".mmm" if wished, and "Z" or an
/// offset of at most 14:59. Years 2000 to 2099 of the written local time; the date must exist;
/// no 24:00 and no leap second. Anything else is nullopt. Does not allocate.
std::optional<Instant> parseInstant(std::string_view text) noexcept;

/// A moment and the offset that it was written with, nullopt for Z.
struct WrittenInstant {
    Instant moment;
    std::optional<Duration> offset;
};

/// As parseInstant().
std::optional<WrittenInstant> parseWrittenInstant(std::string_view text) noexcept;

/// "2031-03-04T13:14:00.000Z". Meant for the years 0 to 9999.
std::string formatUtc(Instant t);

/// The local time at that offset, as parseInstant() reads it: "2031-03-04T07:14-06:00", with
/// seconds and thousandths only where they are not 0. The offset is taken in whole minutes. Meant
/// for the years 0 to 9999.
std::string formatAt(Instant t, Duration offset);

} // namespace loadwarden
