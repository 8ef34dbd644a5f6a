#pragma once

#include "core/cycle/trace/phases.h"
#include "core/cycle/trace/pressure_series.h"

namespace loadwarden {

/// What the pressure did before the exposure; places are those of the series.
struct AirRemovalLook {
    std::vector<Pulse> pulses;
    std::size_t lastTrough = 0; ///< meaningful with a pulse
};

/// The pulses up to `last`, the last place before or at which the exposure began.
[[nodiscard]] AirRemovalLook findPulses(const PressureSeries& pressure, std::size_t last,
                                        AirRemoval airRemoval, double atmosphereKPa,
                                        const TraceSettings& settings);

/// The last place from `first` to `last` at which the pressure is at most that; `first` where it
/// is nowhere.
[[nodiscard]] std::size_t lastAtMost(const PressureSeries& pressure, std::size_t first,
                                     std::size_t last, double kPa);

} // namespace loadwarden
