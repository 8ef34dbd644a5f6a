#pragma once

#include "core/cycle/simulation/simulation.h"

// What the evaluation of a trace owes to the truth of a simulated cycle. Written before the
// evaluation was, and not to be changed with it.

namespace loadwarden::testing {

/// A boundary between phases: seconds beside the sampling interval.
inline constexpr double boundarySeconds = 6;
/// Vacuum and pressure of a pulse, kPa, and for each second between samples; only where that is at
/// most 2.
inline constexpr double pulseKPa = 3;
inline constexpr double pulseKPaASecond = 1;
/// Exposure: its bounds hold the truth within this, in seconds beside the sampling interval. Noise
/// carries a sample over the edge of the band.
inline constexpr double exposureSeconds = 4;
/// F0 of the whole cycle, as a share, where a sample is taken at least every 5 s.
inline constexpr double lethalityShare = 0.02;
/// The mean difference from saturation through exposure, kelvin.
inline constexpr double saturationKelvin = 0.2;
/// The rate of a leak, kPa a minute.
inline constexpr double leakKPaAMinute = 0.03;

/// The size from which on a fault must be found, and below 0.7 of which it must not be reported.
[[nodiscard]] constexpr double leastSize(simulation::FaultKind kind, double samplingSeconds)
{
    switch (kind) {
    case simulation::FaultKind::shortExposure: return 15 + 2 * samplingSeconds;
    case simulation::FaultKind::interruptedExposure: return 20 + 2 * samplingSeconds;
    case simulation::FaultKind::lowTemperature: return 0.5;
    case simulation::FaultKind::highTemperature: return 0.5;
    // The limit is 2 K; a sensor's noise and the swing of the steam stand beside it.
    case simulation::FaultKind::residualAir: return 2.4;
    case simulation::FaultKind::superheat: return 2.4;
    case simulation::FaultKind::slowHeating: return 3;
    case simulation::FaultKind::sensorDropout: return 10 + 4 * samplingSeconds;
    case simulation::FaultKind::leak: return 0.13 + leakKPaAMinute;
    case simulation::FaultKind::shortDrying: return 60 + 2 * samplingSeconds;
    }
    return 0;
}

} // namespace loadwarden::testing
