#include "core/acts/bodies/bodies.h"
#include "core/cycle/cycle_words.h"
#include "core/cycle/sound.h"
#include "core/indicators/indicator_words.h"
#include "core/packaging/packaging_words.h"
#include "core/quantities/method_words.h"
#include "core/quantities/role_words.h"
#include "core/quantities/zone.h"

namespace loadwarden::body_format {
namespace {

/// The methods of a set, in their own order, as words.
struct Methods {
    void write(std::string& out, MethodSet value) const
    {
        char before = '[';
        for (const auto& word : methodWords) {
            if (value.contains(word.value)) {
                out += before;
                appendJsonString(out, word.text);
                before = ',';
            }
        }
        out += before == '[' ? "[]" : "]";
    }
    [[nodiscard]] Wanted read(const Node& from, MethodSet& value) const
    {
        if (from.isArray()) {
            bool allKnown = true;
            const Node* each = from.first();
            for (std::size_t i = 0; i < from.size(); ++i, each = each->next()) {
                Method method = Method::unknown;
                allKnown = allKnown && oneOf<methodWords>.read(*each, method).empty()
                           && method != Method::unknown;
                value.add(method);
            }
            if (allKnown) {
                return {};
            }
        }
        return "a list of methods";
    }
};

/// A zone that this computer knows.
struct ZoneName {
    void write(std::string& out, const std::string& value) const { appendJsonString(out, value); }
    [[nodiscard]] Wanted read(const Node& from, std::string& value) const
    {
        if (from.text() != nullptr && Zone::find(*from.text())) {
            value = *from.text();
            return {};
        }
        return "a time zone of the IANA database, such as America/Chicago";
    }
};

constexpr Typed atmosphere{3, 50'000, 110'000};
constexpr Text fileText{1, 65'536, true};
constexpr Whole revisions{1, 100'000};
constexpr Whole isoTypes{1, 6};
constexpr Whole minutesOfDay{0, 1'439};
constexpr Whole untilRead{1, 10'000'000};
constexpr Whole untilReadout{1, mostMinutes};
constexpr Whole untilLate{1, 1'000'000};

/// Whether a temperature, and the same beside it in the other unit, are what evidence can state.
bool areTemperatures(const std::optional<Quantity>& first, const std::optional<Quantity>& second)
{
    if (!second) {
        return !first || fits(Parameter::temperature, first->unit);
    }
    return first && first->unit == Unit::celsius && second->unit == Unit::fahrenheit;
}

constexpr const char* temperaturesWanted =
    "must have a temperature in celsius or fahrenheit; where it is stated in both, \"temperature\" "
    "in celsius and \"inFahrenheit\" in fahrenheit";

bool isInSeconds(const std::vector<Quantity>& values)
{
    return std::ranges::find(values, Unit::seconds, &Quantity::unit) != values.end();
}

} // namespace

template <class Io>
void members(Io& io, Ref<Io, JournalOpened> act)
{
    io.must("facility", act.facility, aName);
    io.must("journal", act.journal, aName);
    io.must("timeZone", act.timeZone, ZoneName{});
}

template <class Io>
void members(Io& io, Ref<Io, FacilityRecorded> act)
{
    io.must("name", act.name, aName);
    io.must("timeZone", act.timeZone, ZoneName{});
    io.may("atmosphereKPa", act.atmosphereKPa, atmosphere);
}

template <class Io>
void members(Io& io, Ref<Io, StaffRecorded> act)
{
    io.must("name", act.name, aName);
    io.must("role", act.role, oneOf<roleWords>);
    io.may("badge", act.badge, aName);
    io.must("active", act.active, aFlag);
}

template <class Io>
void members(Io&, Ref<Io, StaffPinSet>)
{
}

template <class Io>
void members(Io& io, Ref<Io, PolicyRecorded> act)
{
    io.must("name", act.name, aName);
    io.must("revision", act.revision, revisions);
    io.must("digest", act.digest, aDigest);
    io.must("toml", act.toml, fileText);
}

template <class Io>
void members(Io& io, Ref<Io, SterilizerAeration> aeration)
{
    io.must("celsiusHundredths", aeration.celsiusHundredths, inCelsiusHundredths);
    io.must("minutes", aeration.minutes, inMinutes);
}

template <class Io>
void members(Io& io, Ref<Io, SterilizerRecorded> act)
{
    io.must("name", act.name, aName);
    io.may("model", act.model, aName);
    io.must("testMinute", act.testMinute, minutesOfDay);
    io.must("recordsConcentration", act.recordsConcentration, aFlag);
    io.must("recordsHumidity", act.recordsHumidity, aFlag);
    io.may("aeration", act.aeration, nested<SterilizerAeration>);
}

template <class Io>
void members(Io& io, Ref<Io, Limit> limit)
{
    io.must("parameter", limit.parameter, oneOf<parameterWords>);
    io.may("least", limit.least, listOf(aValue, 10));
    io.may("most", limit.most, listOf(aValue, 10));
    io.require(!isInSeconds(limit.least) && !isInSeconds(limit.most),
               "must state times in minutes");
    io.require(isSound(limit), "must be a limit with at least one value, each in a unit of its "
                               "parameter, none twice, the least not above the most, in the order "
                               "of the units");
}

template <class Io>
void members(Io& io, Ref<Io, ProgramSettings> settings)
{
    io.may("temperature", settings.temperature, aValue);
    io.may("inFahrenheit", settings.inFahrenheit, aValue);
    io.may("exposureMs", settings.exposureMs, inMilliseconds);
    io.may("dryingMs", settings.dryingMs, inMilliseconds);
    io.require(areTemperatures(settings.temperature, settings.inFahrenheit), temperaturesWanted);
}

template <class Io>
void members(Io& io, Ref<Io, SpecificationRecorded> act)
{
    auto& specification = act.specification;
    io.must("name", specification.id, aName);
    io.must("revision", specification.revision, revisions);
    io.must("purpose", specification.purpose, oneOf<purposeWords>);
    io.unless("method", Method::unknown, specification.method, oneOf<methodWords>);
    io.unless("airRemoval", AirRemoval::unknown, specification.airRemoval, oneOf<airRemovalWords>);
    io.may("program", specification.program, aName);
    io.may("cycleType", specification.cycleType, aName);
    io.must("extended", specification.extended, aFlag);
    io.must("settings", specification.settings, nested<ProgramSettings>);
    io.may("limits", specification.limits, listOf(nested<Limit>, 6));
    io.require(hasEachParameterOnce(specification.limits),
               "must have the limits of a parameter in one place");
}

template <class Io>
void members(Io& io, Ref<Io, SheetDirections> sheet)
{
    io.may("leastMs", sheet.leastMs, inMilliseconds);
    io.may("mostMs", sheet.mostMs, inMilliseconds);
    io.may("leastCelsiusHundredths", sheet.leastCelsiusHundredths, inCelsiusHundredths);
    io.may("mostCelsiusHundredths", sheet.mostCelsiusHundredths, inCelsiusHundredths);
    io.must("dryingForbidden", sheet.dryingForbidden, aFlag);
}

template <class Io>
void members(Io& io, Ref<Io, ProductRecorded> act)
{
    auto& product = act.product;
    io.must("name", act.name, aName);
    io.must("kind", product.kind, oneOf<indicatorKindWords>);
    io.must("methods", product.methods, Methods{});
    io.may("cycleTypes", product.cycleTypes, listOf(aName, 100));
    io.must("response", product.response, oneOf<responseWords>);
    const bool biological = product.kind == IndicatorKind::biological;
    io.require(biological == (product.response == Response::growth),
               "must answer by growth where it is biological, and only there");
    if (!biological) {
        io.must("type", product.type, isoTypes);
        io.may("readWithinMinutes", product.readWithinMinutes, untilRead);
        io.must("sheet", product.sheet, nested<SheetDirections>);
        return;
    }
    io.must("species", product.species, oneOf<speciesWords>);
    io.must("releaseMinutes", product.releaseMinutes, untilReadout);
    io.may("lastMinutes", product.lastMinutes, untilReadout);
    io.may("latestMinutes", product.latestMinutes, untilLate);
    io.may("startWithinMinutes", product.startWithinMinutes, untilLate);
    io.must("needsActivation", product.needsActivation, aFlag);
    io.must("hasProcessIndicator", product.hasProcessIndicator, aFlag);
    io.may("control", product.control, oneOf<controlReachWords>);
    io.may("implantIndicatorTypes", product.implantIndicatorTypes, listOf(isoTypes, 6));
}

template <class Io>
void members(Io& io, Ref<Io, ProductLotRecorded> act)
{
    io.must("number", act.number, aName);
    io.may("expires", act.expires, aDay);
}

template <class Io>
void members(Io& io, Ref<Io, PackagingRecorded> act)
{
    io.must("name", act.name, aName);
    io.must("form", act.packaging.form, oneOf<packageFormWords>);
    io.must("methods", act.packaging.methods, Methods{});
    io.may("aerationMinutes", act.packaging.aerationMinutes, inMinutes);
}

template <class Io>
void members(Io& io, Ref<Io, AllowedCycle> cycle)
{
    io.unless("method", Method::unknown, cycle.method, oneOf<methodWords>);
    io.unless("airRemoval", AirRemoval::unknown, cycle.airRemoval, oneOf<airRemovalWords>);
    io.may("temperature", cycle.temperature, aValue);
    io.may("inFahrenheit", cycle.inFahrenheit, aValue);
    io.may("leastMs", cycle.leastMs, inMilliseconds);
    io.may("mostMs", cycle.mostMs, inMilliseconds);
    io.may("dryingMs", cycle.dryingMs, inMilliseconds);
    io.may("program", cycle.program, aName);
    io.may("sterilizerModel", cycle.sterilizerModel, aName);
    io.require(areTemperatures(cycle.temperature, cycle.inFahrenheit), temperaturesWanted);
}

template <class Io>
void members(Io& io, Ref<Io, DeviceRecorded> act)
{
    io.must("name", act.device.name, aName);
    io.may("allowedCycles", act.device.allowedCycles, listOf(nested<AllowedCycle>, 100));
    io.may("aerationMinutes", act.device.aerationMinutes, inMinutes);
}

template <class Io>
void members(Io& io, Ref<Io, IncubatorRecorded> act)
{
    io.must("name", act.name, aName);
}

template <class Io>
void members(Io& io, Ref<Io, SealKeyRecorded> act)
{
    io.must("key", act.key, aDigest);
    io.must("why", act.why, aText);
}

LW_BODY(JournalOpened)
LW_BODY(FacilityRecorded)
LW_BODY(StaffRecorded)
LW_BODY(StaffPinSet)
LW_BODY(PolicyRecorded)
LW_BODY(SterilizerRecorded)
LW_BODY(SpecificationRecorded)
LW_BODY(ProductRecorded)
LW_BODY(ProductLotRecorded)
LW_BODY(PackagingRecorded)
LW_BODY(DeviceRecorded)
LW_BODY(IncubatorRecorded)
LW_BODY(SealKeyRecorded)

} // namespace loadwarden::body_format
