#pragma once

#include "core/cycle/quantity.h"
#include "core/exchange/evidence/bind.h"

namespace loadwarden::evidence_format {

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

/// A number in a unit; Store::store(owner, quantity, written) says where it goes.
template <class Store, Unit InUnit>
consteval Field measured(std::string_view name)
{
    constexpr UnitRange range = rangeOf(InUnit);
    constexpr std::int64_t scale = range.decimals == 2 ? 100 : 1'000;
    return {name,
            NumberRule{range.decimals, range.least * scale, range.most * scale,
                       [](void* owner, std::int64_t scaled, std::string_view written) {
                           Store::store(owner, Quantity{InUnit, scaled * (1'000 / scale)}, written);
                       }}};
}

} // namespace loadwarden::evidence_format
