#include "core/cycle/cycle_words.h"
#include "core/cycle/specification.h"
#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/unit_fields.h"

#include <algorithm>
#include <iterator>

// A cycle specification: the program's settings and the limits of its record.

namespace loadwarden::evidence_format {

namespace {

/// A limit's value goes where the order of Limit wants it, whatever the order of the file.
template <std::vector<Quantity> Limit::*Side>
struct ToLimit {
    static void store(void* owner, Quantity value, std::string_view)
    {
        auto& side = static_cast<Limit*>(owner)->*Side;
        const auto after = std::ranges::upper_bound(side, value.unit, {}, &Quantity::unit);
        side.insert(after, value);
    }
    static Fetched<Number> fetch(const void* owner, Unit unit)
    {
        const auto& side = static_cast<const Limit*>(owner)->*Side;
        const auto found = std::ranges::find(side, unit, &Quantity::unit);
        return found == side.end() ? Fetched<Number>{} : fetchedIn(unit, *found);
    }
};

using ToLeast = ToLimit<&Limit::least>;
using ToMost = ToLimit<&Limit::most>;

static_assert(Unit::celsius < Unit::fahrenheit && Unit::kPaAbsolute < Unit::barAbsolute
                  && Unit::barAbsolute < Unit::kPaGauge && Unit::kPaGauge < Unit::barGauge
                  && Unit::barGauge < Unit::psiGauge,
              "the order of the units is the order in which a limit is looked for");

constexpr auto limit = fields(word<parameterWords, &Limit::parameter>("parameter").must(),
                              measured<ToLeast, Unit::celsius>("leastCelsius"),
                              measured<ToLeast, Unit::fahrenheit>("leastFahrenheit"),
                              measured<ToLeast, Unit::minutes>("leastMinutes"),
                              measured<ToLeast, Unit::kPaAbsolute>("leastKPaAbsolute"),
                              measured<ToLeast, Unit::barAbsolute>("leastBarAbsolute"),
                              measured<ToLeast, Unit::kPaGauge>("leastKPaGauge"),
                              measured<ToLeast, Unit::barGauge>("leastBarGauge"),
                              measured<ToLeast, Unit::psiGauge>("leastPsiGauge"),
                              measured<ToLeast, Unit::mgPerL>("leastMgPerL"),
                              measured<ToLeast, Unit::percent>("leastPercent"),
                              measured<ToMost, Unit::celsius>("mostCelsius"),
                              measured<ToMost, Unit::fahrenheit>("mostFahrenheit"),
                              measured<ToMost, Unit::minutes>("mostMinutes"),
                              measured<ToMost, Unit::kPaAbsolute>("mostKPaAbsolute"),
                              measured<ToMost, Unit::barAbsolute>("mostBarAbsolute"),
                              measured<ToMost, Unit::kPaGauge>("mostKPaGauge"),
                              measured<ToMost, Unit::barGauge>("mostBarGauge"),
                              measured<ToMost, Unit::psiGauge>("mostPsiGauge"),
                              measured<ToMost, Unit::mgPerL>("mostMgPerL"),
                              measured<ToMost, Unit::percent>("mostPercent"));

/// The units of limits in the order of the table, which has them once for least, once for most.
constexpr Unit limitUnits[] = {
    Unit::celsius,  Unit::fahrenheit, Unit::minutes,  Unit::kPaAbsolute, Unit::barAbsolute,
    Unit::kPaGauge, Unit::barGauge,   Unit::psiGauge, Unit::mgPerL,      Unit::percent};

std::string_view limitFieldName(std::size_t side, Unit unit)
{
    const auto which = static_cast<std::size_t>(std::ranges::find(limitUnits, unit) - limitUnits);
    return limit[1 + side * std::size(limitUnits) + which].name;
}

/// Only values that fit the parameter, at least one, and in no unit a least above its most.
bool checkLimit(void* object, FieldSet, Complaint& complaint)
{
    const auto& checked = *static_cast<const Limit*>(object);
    const std::string parameter(textOf(checked.parameter));
    const std::vector<Quantity>* const sides[] = {&checked.least, &checked.most};
    for (std::size_t side = 0; side < 2; ++side) {
        for (const Quantity& value : *sides[side]) {
            if (!fits(checked.parameter, value.unit)) {
                complaint.field = pointerStep(limitFieldName(side, value.unit));
                complaint.message = "a limit of " + parameter + " cannot be stated so";
                return false;
            }
        }
    }
    if (checked.least.empty() && checked.most.empty()) {
        complaint.message = "a limit of " + parameter + " needs a value, least or most";
        return false;
    }
    for (const Quantity& least : checked.least) {
        for (const Quantity& most : checked.most) {
            if (least.unit == most.unit && least.thousandths > most.thousandths) {
                complaint.field = pointerStep(limitFieldName(0, least.unit));
                complaint.message = "must not be above " + quoted(limitFieldName(1, least.unit));
                return false;
            }
        }
    }
    return true;
}

/// Whether every value is in a unit that has a field. A journal also knows limits in seconds.
bool hasFieldsForUnits(const void* owner)
{
    const auto hasField = [](const Quantity& value) {
        return std::ranges::find(limitUnits, value.unit) != std::end(limitUnits);
    };
    const auto& checked = *static_cast<const Limit*>(owner);
    return std::ranges::all_of(checked.least, hasField)
           && std::ranges::all_of(checked.most, hasField);
}

constinit const ObjectType limitType =
    objectType("a limit", limit, checkLimit).onlyWhere(hasFieldsForUnits);

struct ToSettings {
    static void store(void* owner, Quantity value, std::string_view)
    {
        storeTemperature(*static_cast<ProgramSettings*>(owner), value);
    }
    static Fetched<Number> fetch(const void* owner, Unit unit)
    {
        return fetchTemperature(*static_cast<const ProgramSettings*>(owner), unit);
    }
};

constexpr auto settings = fields(measured<ToSettings, Unit::celsius>("celsius"),
                                 measured<ToSettings, Unit::fahrenheit>("fahrenheit"),
                                 minutesAsMs<&ProgramSettings::exposureMs>("exposureMinutes"),
                                 minutesAsMs<&ProgramSettings::dryingMs>("dryingMinutes"));

constinit const ObjectType settingsType = objectType("the program's settings", settings);

constexpr auto specification = fields(
    id<&CycleSpecification::id>("id").must(),
    whole<&CycleSpecification::revision>("revision", 1, 100'000).must(),
    word<methodWords, &CycleSpecification::method>("method"),
    word<airRemovalWords, &CycleSpecification::airRemoval>("airRemoval"),
    word<purposeWords, &CycleSpecification::purpose>("purpose").must(),
    id<&CycleSpecification::program>("program"), id<&CycleSpecification::cycleType>("cycleType"),
    flag<&CycleSpecification::extended>("extended"),
    object<settingsType, &CycleSpecification::settings>("settings"),
    objects<limitType, &CycleSpecification::limits>("limits"));

/// One entry a parameter.
bool checkSpecification(void* object, FieldSet, Complaint& complaint)
{
    const auto& limits = static_cast<const CycleSpecification*>(object)->limits;
    for (std::size_t i = 1; i < limits.size(); ++i) {
        for (std::size_t j = 0; j < i; ++j) {
            if (limits[i].parameter == limits[j].parameter) {
                complaint.field = "/limits/" + std::to_string(i) + "/parameter";
                complaint.message = "the limits of " + std::string(textOf(limits[i].parameter))
                                    + " stand in two entries; put them into one";
                return false;
            }
        }
    }
    return true;
}

} // namespace

constinit const ObjectType specificationType =
    objectType("a cycle specification", specification, checkSpecification);

} // namespace loadwarden::evidence_format
