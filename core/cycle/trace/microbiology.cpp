#include "core/cycle/trace/microbiology.h"

#include <cmath>

namespace loadwarden {

double logReduction(double fMinutes, double dMinutes)
{
    return dMinutes > 0 && fMinutes >= 0 ? fMinutes / dMinutes : notKnown;
}

double survivorsOf(double count, double logReduction)
{
    return count >= 0 ? count * std::pow(10.0, -logReduction) : notKnown;
}

double chanceOfAny(double survivors)
{
    return survivors >= 0 ? -std::expm1(-survivors) : notKnown;
}

Inactivation inactivate(const Population& population, double fMinutes)
{
    Inactivation result;
    result.logReduction = logReduction(fMinutes, population.dMinutes);
    result.survivors = survivorsOf(population.count, result.logReduction);
    result.chanceOfAny = chanceOfAny(result.survivors);
    if (std::isnan(result.survivors)) {
        result.logReduction = notKnown;
    }
    return result;
}

} // namespace loadwarden
