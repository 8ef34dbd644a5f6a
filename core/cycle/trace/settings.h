#pragma once

#include <limits>

namespace loadwarden {

/// The thresholds by which a trace is read. Where a standard or a maker states a number, the cycle
/// specification or the policy gives it; these are defaults.
struct TraceSettings {
    /// Between two samples further apart nothing is known: the time does not count as in the band,
    /// adds no lethality and no drying. A line a minute, and half of one more. Common practice, no
    /// source.
    double mostStepSeconds = 90;

    /// Hotter than this above the saturation temperature of its pressure, a chamber is not held in
    /// steam: a hot jacket while drying is no exposure. Common practice, no source.
    double leavesSteamKelvin = 10;

    /// A stay in the band of this length always belongs to the exposure. Common practice, no
    /// source.
    double leastHoldSeconds = 30;

    /// A shorter one does only if what parts it from the longest stay leaves the band by more than
    /// a sensor's noise (else the chamber was still coming to the band, or already leaving it) and,
    /// before the longest, does not fall as far as a pulse of air removal. Common practice, no
    /// source.
    double noiseKelvin = 0.5;
    double shallowKelvin = 10;

    /// A time that falls short by no more than this is not shown to be short: noise where the
    /// temperature crosses the edge of the band takes as much away. It is not shown to be met
    /// either. Common practice, no source.
    double timeDoubtSeconds = 5;

    /// So long after its begin and before its end the difference from saturation is not judged: the
    /// load still warms, or the steam is already let out (EN 285: equilibration at most 15 s up to
    /// 800 L; from memory).
    double saturationEdgeSeconds = 15;

    /// Where the band is not reached, or only passed through on the way above it: how far below its
    /// least a plateau is looked for, and how far below its own top it reaches. Common practice, no
    /// source.
    double plateauBelowBandKelvin = 15;
    double plateauDepthKelvin = 2;

    /// The least swing of pressure that makes a pulse. Common practice, no source.
    double pulseLeastKPa = 15;

    /// A pressure that stays within this does not move. Common practice, no source.
    double flatKPa = 2;

    /// Within this of the site's atmosphere a chamber counts as being at it. Common practice, no
    /// source.
    double nearAtmosphereKPa = 10;

    /// Where samples are further apart than this during air removal, a pulse may lie between them
    /// and their count is not sure. Common practice, no source.
    double pulseMostStepSeconds = 10;

    /// Leak test: time to settle, time of measuring (HTM 2010 and EN 285 practice texts, restated),
    /// how near to the deepest vacuum counts as evacuated, the rise a minute from which on air is
    /// let in, and the change of temperature from which on the rate is doubtful (the last three:
    /// common practice, no source).
    double leakSettleSeconds = 300;
    double leakMeasureSeconds = 600;
    double leakEvacuatedKPa = 0.2;
    double leakAirAdmissionKPaPerMinute = 10;
    double leakTemperatureKelvin = 10;
};

/// A length of time, or another figure, as far as the samples leave it open. `most` is infinite
/// where the trace begins or ends with it.
struct Bounds {
    double least = 0;
    double most = 0;

    friend bool operator==(const Bounds&, const Bounds&) = default;
};

/// What says nothing: not measured, or not to be computed.
inline constexpr double notKnown = std::numeric_limits<double>::quiet_NaN();
inline constexpr double unbounded = std::numeric_limits<double>::infinity();

} // namespace loadwarden
