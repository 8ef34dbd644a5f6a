#pragma once

#include "core/cycle/quantity.h"
#include "core/cycle/unit_range.h"
#include "core/exchange/evidence/bind.h"

namespace loadwarden::evidence_format {

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
