#pragma once

#include "core/cycle/trace/microbiology.h"
#include "core/guidance/topic.h"

#include <optional>
#include <string>
#include <variant>

namespace loadwarden {

/// The probability of one viable organism on an item that is asked of sterile devices (CDC
/// Guideline for Disinfection and Sterilization in Healthcare Facilities, 2008).
inline constexpr double askedAssurance = 1e-6;

/// What a time at a temperature does to a population, by the log-linear model: core/cycle/trace
/// computes it, for traces and for questions alike.
struct Assurance {
    double population = 0;
    double dMinutes = 0;
    double minutes = 0;
    double logReduction = 0;
    double survivors = 0; ///< expected number
    double chanceOfAny =
        0; ///< that at least one survives: of an item its sterility assurance level
    double chanceOfNone = 0; ///< that a biological indicator with this population shows no growth
    double minutesAsked = 0; ///< least time after which the chance is `askedAssurance`
};

/// `population` organisms (above 0, to 1e12), of which a tenth survives `dMinutes` (above 0, to
/// 1e4), for `minutes` (from 0, to 1e5) at that temperature. A text says what is wrong with a
/// number.
[[nodiscard]] std::variant<Assurance, std::string> assure(double population, double dMinutes,
                                                          double minutes);

} // namespace loadwarden
