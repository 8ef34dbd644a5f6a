#pragma once

#include <cstddef>
#include <cstdint>

namespace loadwarden {

/// By what a recorder's text is judged. Common practice without source, unless one is named.
struct TraceLimits {
    std::size_t mostBytes = std::size_t{96} << 20U; ///< 24 h at 1 Hz of 16 channels: some 10 MB
    std::size_t mostSamples = 1'200'000;

    /// A step longer than so many typical ones is a gap. A single sample that is missing is left to
    /// the bounds of what is computed.
    double gapSteps = 2.5;

    /// A clock that goes back is past midnight when the step, a day added, is no longer than this.
    double mostSecondsOverMidnight = 3600;

    /// What a sensor cannot do. A sensor that shows 90 % of a step within 5 s (EN 285 asks for no
    /// more, from memory) and is brought from 50 °C into steam of 134 °C rises by 39 K in a second
    /// at first; pressures in chambers change by some tens of kPa in a second.
    double mostKelvinPerSecond = 40;
    double mostKPaPerSecond = 100;

    /// What is no temperature of a sterilizer (broken and shorted sensors are written as values
    /// far beyond), and no absolute pressure; a vacuum may be shown a little below none.
    double leastCelsius = -40;
    double mostCelsius = 250;
    double leastKPa = -5;
    double mostKPa = 700;

    /// So many samples without a value one after the other: the sensor was lost.
    std::int64_t lostSamples = 5;

    /// A sensor is flat that writes one value for so long, or through all of the trace, while
    /// another shows that the chamber changed.
    double flatSeconds = 600;
    std::int64_t flatSamples = 5;
    double changedKelvin = 20;
    double changedKPa = 50;

    /// A site's atmosphere, kPa absolute: from the highest towns to the greatest air pressure.
    double leastAtmosphereKPa = 50;
    double mostAtmosphereKPa = 110;
};

} // namespace loadwarden
