#pragma once

#include "core/cycle/quantity.h"

#include <cstdint>

namespace loadwarden {

/// How a quantity may be stated in a unit. Stored are thousandths whatever the unit.
struct UnitRange {
    int decimals;
    std::int64_t least; ///< whole units
    std::int64_t most;
};

[[nodiscard]] constexpr UnitRange rangeOf(Unit unit)
{
    switch (unit) {
    case Unit::celsius: return {2, -90, 500};
    case Unit::fahrenheit: return {2, -130, 932};
    case Unit::minutes: return {3, 0, 100'000};
    case Unit::seconds: return {3, 0, 6'000'000};
    case Unit::kPaAbsolute:
    case Unit::barAbsolute: return {3, 0, 10'000};
    case Unit::kPaGauge:
    case Unit::barGauge:
    case Unit::psiGauge: return {3, -1'000, 10'000};
    case Unit::mgPerL: return {3, 0, 100'000};
    case Unit::percent: return {3, 0, 100};
    }
    throw "no such unit";
}

} // namespace loadwarden
