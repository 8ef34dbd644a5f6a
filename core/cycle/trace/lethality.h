#pragma once

#include "core/cycle/trace/settings.h"

#include <cstddef>
#include <span>
#include <vector>

namespace loadwarden {

/// What lethality is referred to: a temperature in degrees Celsius and the rise in kelvin that
/// makes killing ten times faster. F0 is z = 10 K with 121.1 °C or 121.11 °C (250 °F), which differ
/// by 0.23 %: whoever states an F0 states which.
struct LethalReference {
    double celsius = 121.1;
    double zKelvin = 10;

    friend bool operator==(const LethalReference&, const LethalReference&) = default;
};

/// Whether F can be computed to it: 0 to 500 °C and z from 2 to 100 K.
[[nodiscard]] bool isSound(const LethalReference& reference);

/// 10^((celsius − reference) / z), the minutes at the reference that one minute is worth; NaN where
/// the reference is not sound or the temperature is none (beyond −90 to 500 °C).
[[nodiscard]] double lethalRate(double celsius, const LethalReference& reference);

/// The time integral of the lethal rate.
struct Lethality {
    double minutes = 0;        ///< NaN where the reference is not sound
    double leftOutSeconds = 0; ///< between samples that were not counted
    std::size_t gaps = 0;      ///< how many stretches that makes

    friend bool operator==(const Lethality&, const Lethality&) = default;
};

/// F of a temperature over time by the trapezoid rule on the rate (general method), on steps of any
/// length. `seconds` rise; the longer of the two spans is cut. Time beside a value that is NaN or
/// no temperature, and steps longer than `mostStepSeconds`, is left out: it adds nothing and is
/// said. Fewer than two samples are 0 minutes. Agrees with a plain loop to 1e-12.
[[nodiscard]] Lethality lethality(std::span<const double> seconds, std::span<const double> celsius,
                                  const LethalReference& reference,
                                  double mostStepSeconds = TraceSettings{}.mostStepSeconds);

/// The same from the first sample up to each one, in minutes: as many values as samples, level
/// over what is left out, all NaN where the reference is not sound.
[[nodiscard]] std::vector<double>
cumulativeLethality(std::span<const double> seconds, std::span<const double> celsius,
                    const LethalReference& reference,
                    double mostStepSeconds = TraceSettings{}.mostStepSeconds);

} // namespace loadwarden
