#pragma once

#include "core/cycle/trace/answer.h"
#include "core/cycle/trace/exposure.h"

namespace loadwarden {

/// Within which exposure a Bowie-Dick pack may be judged, by its maker's directions; NaN: not
/// stated.
struct PackDirections {
    double leastCelsius = notKnown;
    double mostCelsius = notKnown;
    double leastSeconds = notKnown;
    double mostSeconds = notKnown;
};

/// The exposure of a Bowie-Dick cycle against the pack's directions.
struct PackExposure {
    /// Time continuously at or above the least temperature and, within the hold around it, the
    /// extremes of the required channels in degrees Celsius.
    Bounds seconds;
    double coldest = notKnown;
    double hottest = notKnown;

    Shown leastTime = Shown::notAsked;
    /// From the first to the last time at the least temperature: several short ones add up.
    Shown mostTime = Shown::notAsked;
    Shown mostTemperature = Shown::notAsked;
};

/// Without a least temperature no time can be told: then what is stated of time is open.
[[nodiscard]] PackExposure packExposure(const Trace& trace,
                                        const std::vector<std::size_t>& required,
                                        const PackDirections& directions,
                                        const TraceSettings& settings = {});

} // namespace loadwarden
