#pragma once

#include "core/indicators/directions.h"
#include "core/indicators/indicator.h"

#include <cstdint>
#include <limits>
#include <optional>

namespace loadwarden {

/// A moving front is told in thousandths of its strip, from where the front starts.
inline constexpr int wholeStrip = 1'000;

/// Where a drawing has the boundary whose place nobody stated.
inline constexpr int unstatedBoundary = 550;

/// How near to the boundary, before it or behind it, a front counts as on it: an eye does not tell
/// less apart, and the line has a width. Common practice, no source.
inline constexpr int readingTolerance = 10;

/// Where the boundary is by the directions. nullopt: not stated, or so that it cannot be.
[[nodiscard]] constexpr std::optional<int>
boundaryOf(const std::optional<ReadingDirections>& directions)
{
    constexpr std::int64_t longest = std::numeric_limits<std::int64_t>::max() / (2 * wholeStrip);
    if (!directions || !directions->stripTenthsMm || !directions->boundaryTenthsMm) {
        return std::nullopt;
    }
    const std::int64_t strip = *directions->stripTenthsMm;
    const std::int64_t boundary = *directions->boundaryTenthsMm;
    if (boundary <= 0 || boundary >= strip || strip > longest) {
        return std::nullopt;
    }
    return static_cast<int>((boundary * wholeStrip + strip / 2) / strip);
}

/// What is seen where a front ends: it need only have entered the accept zone, it need not fill it;
/// on the boundary it has not.
[[nodiscard]] constexpr Seen seenOfFront(int front, int boundary)
{
    return front > boundary + readingTolerance    ? Seen::frontInAcceptZone
           : front >= boundary - readingTolerance ? Seen::frontOnBoundary
                                                  : Seen::frontShortOfBoundary;
}

} // namespace loadwarden
