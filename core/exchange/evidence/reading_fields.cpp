#include "core/cycle/cycle_words.h"
#include "core/cycle/printout.h"
#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/exchange/evidence/object_types.h"
#include "core/exchange/evidence/unit_fields.h"

#include <bit>

// The sterilizer's record of the cycle: its readings, its printout, and what was said of them.

namespace loadwarden::evidence_format {

namespace {

struct ToReading {
    static void store(void* owner, Quantity value, std::string_view written)
    {
        auto& reading = *static_cast<ParameterReading*>(owner);
        reading.value = value;
        reading.typed = written;
    }
    static Fetched<Number> fetch(const void* owner, Unit unit)
    {
        const auto& reading = *static_cast<const ParameterReading*>(owner);
        Fetched<Number> number = fetchedIn(unit, reading.value);
        number.value.written = reading.typed;
        return number;
    }
};

constexpr auto values = fields(
    measured<ToReading, Unit::celsius>("celsius"),
    measured<ToReading, Unit::fahrenheit>("fahrenheit"),
    measured<ToReading, Unit::minutes>("minutes"), measured<ToReading, Unit::seconds>("seconds"),
    measured<ToReading, Unit::kPaAbsolute>("kPaAbsolute"),
    measured<ToReading, Unit::barAbsolute>("barAbsolute"),
    measured<ToReading, Unit::kPaGauge>("kPaGauge"),
    measured<ToReading, Unit::barGauge>("barGauge"),
    measured<ToReading, Unit::psiGauge>("psiGauge"), measured<ToReading, Unit::mgPerL>("mgPerL"),
    measured<ToReading, Unit::percent>("percent"));

constexpr auto reading =
    join(fields(word<parameterWords, &ParameterReading::parameter>("parameter").must()), values,
         actFields<&ParameterReading::act>());

/// The bits of the value fields, which follow the parameter.
constexpr FieldSet valueBits = ((FieldSet{1} << values.size()) - 1) << 1U;

/// The names of the fields in which a parameter may be stated.
std::string fittingNames(Parameter parameter)
{
    std::vector<std::string_view> names;
    for (std::size_t i = 0; i < values.size(); ++i) {
        if (fits(parameter, static_cast<Unit>(i))) {
            names.push_back(values[i].name);
        }
    }
    return listed(names);
}

/// Exactly one value, in a unit that fits.
bool checkReading(void* object, FieldSet present, Complaint& complaint)
{
    const auto& checked = *static_cast<const ParameterReading*>(object);
    const FieldSet stated = present & valueBits;
    const std::string parameter(textOf(checked.parameter));
    if (std::popcount(stated) != 1) {
        complaint.message =
            "a reading of " + parameter
            + (stated == 0 ? " needs a value: " : " has more than one value; it needs one of ")
            + fittingNames(checked.parameter);
        return false;
    }
    if (!fits(checked.parameter, checked.value.unit)) {
        complaint.field = pointerStep(values[static_cast<std::size_t>(checked.value.unit)].name);
        complaint.message = "a reading of " + parameter + " cannot be stated so; it needs "
                            + fittingNames(checked.parameter);
        return false;
    }
    return true;
}

constexpr auto printout =
    join(fields(id<&Printout::program>("program"), id<&Printout::sterilizer>("sterilizer"),
                whole<&Printout::counter>("counter", 0, 1'000'000'000),
                time<&Printout::start>("start"), time<&Printout::end>("end")),
         actFields<&Printout::act>());

constexpr auto statement =
    join(fields(word<printoutAnswerWords, &PrintoutStatement::answer>("answer").must(),
                word<printoutFieldWords, &PrintoutStatement::field>("field")),
         actFields<&PrintoutStatement::act>());

constexpr auto lostReading =
    join(fields(word<parameterWords, &LostReading::parameter>("parameter").must()),
         actFields<&LostReading::act>());

} // namespace

constinit const ObjectType readingType =
    signedType<&ParameterReading::act>("a reading", reading, checkReading);

constinit const ObjectType printoutType = signedType<&Printout::act>("a printout", printout);

constinit const ObjectType printoutStatementType =
    signedType<&PrintoutStatement::act>("an answer about the printout", statement);

constinit const ObjectType lostReadingType =
    signedType<&LostReading::act>("a lost reading", lostReading);

} // namespace loadwarden::evidence_format
