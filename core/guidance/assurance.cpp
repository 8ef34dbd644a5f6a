#include "core/guidance/assurance.h"

#include <cmath>

namespace loadwarden {

std::variant<Assurance, std::string> assure(double population, double dMinutes, double minutes)
{
    if (!(population > 0) || population > 1e12) {
        return "the population must be a number above 0, at most 1000000000000";
    }
    if (!(dMinutes > 0) || dMinutes > 1e4) {
        return "D must be a number of minutes above 0, at most 10000";
    }
    if (!(minutes >= 0) || minutes > 1e5) {
        return "the time must be a number of minutes from 0 to 100000";
    }
    const Inactivation done = inactivate({.count = population, .dMinutes = dMinutes}, minutes);
    Assurance result;
    result.population = population;
    result.dMinutes = dMinutes;
    result.minutes = minutes;
    result.logReduction = done.logReduction;
    result.survivors = done.survivors;
    result.chanceOfAny = done.chanceOfAny;
    result.chanceOfNone = std::exp(-done.survivors);
    // 1 − exp(−n) = p, solved for the expected number n and from it for the time.
    const double survivorsAsked = -std::log1p(-askedAssurance);
    result.minutesAsked = std::max(dMinutes * std::log10(population / survivorsAsked), 0.0);
    return result;
}

} // namespace loadwarden
