#pragma once

#include "core/cycle/trace/lethality.h"

#include <cstdint>

namespace loadwarden {

/// The resistance of a biological indicator, by its certificate, or of a load's own germs, as
/// assumed: `count` organisms of which a tenth survives `dMinutes` at the reference.
struct Population {
    double count = 0;
    double dMinutes = 0;
    LethalReference reference; ///< the temperature of D, and the z of these organisms
};

/// What has to be said wherever these figures are shown.
enum class Caveat : std::uint8_t {
    chamberIsNotPack ///< temperature in the chamber is not temperature inside the pack
};

/// What a lethality does to a population by the log-linear model. All NaN where D is not above 0,
/// the count negative or anything NaN.
struct Inactivation {
    double logReduction = 0;
    double survivors = 0;   ///< expected number
    double chanceOfAny = 0; ///< 0 to 1: that at least one survives
    Caveat caveat = Caveat::chamberIsNotPack;
};

/// F / D; NaN where D is not above 0 or F is negative.
[[nodiscard]] double logReduction(double fMinutes, double dMinutes);

/// count · 10^(−logReduction).
[[nodiscard]] double survivorsOf(double count, double logReduction);

/// 1 − exp(−survivors), exact also for few: of a biological indicator the chance that it grows, of
/// a unit's bioburden the probability that the unit is not sterile (Poisson). 0 to 1; NaN for a
/// negative number.
[[nodiscard]] double chanceOfAny(double survivors);

/// `fMinutes` must have been computed to the population's own reference.
[[nodiscard]] Inactivation inactivate(const Population& population, double fMinutes);

} // namespace loadwarden
