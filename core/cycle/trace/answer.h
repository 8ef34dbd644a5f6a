#pragma once

#include "core/cycle/trace/settings.h"
#include "core/cycle/trace/shown.h"

#include <cmath>

namespace loadwarden {

/// At least that much: met by the lower bound alone; not met where even the upper one is short by
/// more than a doubt. NaN is open; a limit that is NaN is not asked.
[[nodiscard]] inline Shown showsAtLeast(const Bounds& bounds, double limit, double doubt = 0)
{
    if (std::isnan(limit)) {
        return Shown::notAsked;
    }
    if (bounds.least >= limit) {
        return Shown::met;
    }
    return bounds.most + doubt < limit ? Shown::notMet : Shown::open;
}

/// At most that much, the other way round.
[[nodiscard]] inline Shown showsAtMost(const Bounds& bounds, double limit)
{
    if (std::isnan(limit)) {
        return Shown::notAsked;
    }
    if (bounds.most <= limit) {
        return Shown::met;
    }
    return bounds.least > limit ? Shown::notMet : Shown::open;
}

} // namespace loadwarden
