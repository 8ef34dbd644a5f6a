#pragma once

#include "core/cycle/quantity.h"
#include "core/cycle/unit_range.h"
#include "core/exchange/evidence/bind.h"

#include <optional>
#include <utility>

namespace loadwarden::evidence_format {

/// A number of an owner in a unit, without its text; not stated where there is none.
inline Fetched<Number> fetchedIn(Unit unit, const std::optional<Quantity>& value)
{
    if (!value || value->unit != unit) {
        return {};
    }
    return {Stated::yes, {.scaled = value->thousandths}};
}

/// Keeps a temperature that may be stated in both units: `temperature` has celsius then, whatever
/// the order of the file, and `inFahrenheit` the other.
template <class Struct>
void storeTemperature(Struct& owner, Quantity value)
{
    if (!owner.temperature) {
        owner.temperature = value;
    } else if (value.unit == Unit::celsius) {
        owner.inFahrenheit = std::exchange(owner.temperature, value);
    } else {
        owner.inFahrenheit = value;
    }
}

template <class Struct>
Fetched<Number> fetchTemperature(const Struct& owner, Unit unit)
{
    const Fetched<Number> first = fetchedIn(unit, owner.temperature);
    return first.stated == Stated::yes ? first : fetchedIn(unit, owner.inFahrenheit);
}

/// A number in a unit; Place::store(owner, quantity, written) says where it goes, and
/// Place::fetch(owner, unit) what is there in that unit, in thousandths.
template <class Place, Unit InUnit>
consteval Field measured(std::string_view name)
{
    constexpr UnitRange range = rangeOf(InUnit);
    constexpr std::int64_t scale = range.decimals == 2 ? 100 : 1'000;
    return {name,
            NumberRule{range.decimals, range.least * scale, range.most * scale,
                       [](void* owner, std::int64_t scaled, std::string_view written) {
                           Place::store(owner, Quantity{InUnit, scaled * (1'000 / scale)}, written);
                       },
                       [](const void* owner) {
                           Fetched<Number> number = Place::fetch(owner, InUnit);
                           const Number inScale = numberOf(number.value.scaled, 1'000 / scale);
                           number.value.scaled = inScale.scaled;
                           number.value.isExact = inScale.isExact;
                           return number;
                       }}};
}

} // namespace loadwarden::evidence_format
