#pragma once

#include "core/cycle/trace/exposure.h"
#include "core/quantities/method.h"

namespace loadwarden {

enum class PhaseKind : std::uint8_t {
    airRemoval,
    heating,
    equilibration,
    exposure,
    exhaust,
    drying,
    airAdmission
};

/// What set a boundary.
enum class BoundaryRule : std::uint8_t {
    traceBegan,
    leftStartPressure,   ///< the pressure first moved away from where the trace begins
    roseFromLastTrough,  ///< the pressure rose for good from the last pulse's trough
    roseAboveAtmosphere, ///< gravity: the pressure rose above the atmosphere for good
    firstChannelInBand,  ///< the first required channel reached the least temperature
    everyChannelInBand,  ///< every required channel was in the band
    plateauBegan,        ///< the band is never reached: the plateau
    leftBand,
    plateauEnded,
    fellToAtmosphere,
    roseFromVacuum, ///< the pressure rose for good from the last vacuum of drying
    reachedAtmosphere,
    traceEnded
};

struct Boundary {
    Moment at; ///< earliest and latest seconds that the samples leave open
    BoundaryRule rule = BoundaryRule::traceBegan;
};

struct TracePhase {
    PhaseKind kind = PhaseKind::airRemoval;
    Boundary begin;
    Boundary end;
    /// What the samples leave open; `least` is without steps longer than the longest allowed.
    Bounds seconds;
};

/// One pulse of air removal: a trough of pressure, and the peak that belongs to it. With
/// steam-flush pressure-pulse the peak comes first, else after; the last one's then is the pressure
/// reached on the way to exposure.
struct Pulse {
    Moment trough; ///< between the samples around the lowest
    double depthKPa = 0;
    Moment peak;
    double heightKPa = 0;
    bool belowAtmosphere = false;
};

struct Phases {
    std::vector<TracePhase> phases; ///< in order; those that cannot be told are left out
    std::vector<Pulse> pulses;
    /// Whether samples were dense enough during air removal that no pulse can lie between them.
    bool pulsesSure = false;

    [[nodiscard]] const TracePhase* find(PhaseKind kind) const; ///< null where it cannot be told
};

/// Divides a steam cycle into phases by the chamber pressure, the band and the site's atmosphere
/// (kPa absolute). Dynamic air removal and steam-flush pressure-pulse are told by their pulses,
/// gravity by the pressure's rise above the atmosphere. Drying runs from the fall to the atmosphere
/// until air is let in for good (at the atmosphere: until the trace ends), pumping down included.
/// Without exposure there are no phases; without pressure only heating, equilibration and exposure.
[[nodiscard]] Phases findPhases(const Trace& trace, const Band& band, const Exposure& exposure,
                                AirRemoval airRemoval, double atmosphereKPa,
                                const TraceSettings& settings = {});

} // namespace loadwarden
