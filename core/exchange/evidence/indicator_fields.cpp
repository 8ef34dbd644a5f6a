#include "core/exchange/evidence/object_types.h"
#include "core/indicators/indicator.h"
#include "core/indicators/indicator_words.h"

// Chemical and biological indicators, controls, incubators.

namespace loadwarden::evidence_format {

namespace {

template <const auto& Words>
consteval auto readingFields()
{
    return join(fields(word<Words, &IndicatorReading::seen>("seen").must(),
                       object<actType, &IndicatorReading::voided>("voided")),
                actFields<&IndicatorReading::act>());
}

constexpr auto chemicalReading = readingFields<chemicalSeenWords>();
constexpr auto growthReading = readingFields<growthSeenWords>();

constinit const ObjectType chemicalReadingType =
    signedType<&IndicatorReading::act>("a reading", chemicalReading);
constinit const ObjectType growthReadingType =
    signedType<&IndicatorReading::act>("a reading", growthReading);

constexpr auto linkFields =
    fields(id<&ChemicalIndicator::product>("product"), id<&ChemicalIndicator::lot>("lot"));
constexpr auto settleFields =
    fields(ids<&ChemicalIndicator::alsoUsedIn>("alsoUsedIn"),
           objects<chemicalReadingType, &ChemicalIndicator::readings>("readings"),
           object<actType, &ChemicalIndicator::lost>("lost"),
           object<actType, &ChemicalIndicator::unsettled>("unsettled"));

constexpr auto indicator =
    join(linkFields, fields(id<&ChemicalIndicator::place>("place")), settleFields);
constexpr auto sheet = join(linkFields, settleFields);

constexpr auto incidentFinding =
    join(fields(word<foundToBeWords, &IncidentFinding::was>("was").must()),
         actFields<&IncidentFinding::act>());

constinit const ObjectType incidentFindingType =
    signedType<&IncidentFinding::act>("an incident's finding", incidentFinding);

constexpr auto vial = fields(
    id<&Vial::id>("id").must(), id<&Vial::product>("product"), id<&Vial::lot>("lot"),
    id<&Vial::incubator>("incubator"), object<actType, &Vial::activation>("activation"),
    time<&Vial::incubationStart>("incubationStart"),
    word<processIndicatorWords, &Vial::processIndicator>("processIndicator"),
    ids<&Vial::alsoUsedIn>("alsoUsedIn"), objects<growthReadingType, &Vial::readings>("readings"),
    object<actType, &Vial::voided>("voided"), object<actType, &Vial::lost>("lost"),
    object<actType, &Vial::unsettled>("unsettled"),
    object<incidentFindingType, &Vial::incidentFinding>("incidentFinding"));

constexpr auto control = fields(
    id<&Control::id>("id").must(), id<&Control::product>("product"), id<&Control::lot>("lot"),
    id<&Control::incubator>("incubator"), object<actType, &Control::activation>("activation"),
    time<&Control::incubationStart>("incubationStart"),
    word<processIndicatorWords, &Control::processIndicator>("processIndicator"),
    id<&Control::forLoad>("forLoad"), objects<growthReadingType, &Control::readings>("readings"),
    object<actType, &Control::unsettled>("unsettled"));

constexpr auto outOfRange =
    fields(time<&OutOfRange::from>("from").must(), time<&OutOfRange::to>("to"));

bool checkOutOfRange(void* object, FieldSet, Complaint& complaint)
{
    const auto& checked = *static_cast<const OutOfRange*>(object);
    if (!checked.to || *checked.to >= checked.from) {
        return true;
    }
    complaint.field = "/to";
    complaint.message =
        "must not be before \"from\"; leave it out where the incubator is still out "
        "of range";
    return false;
}

constinit const ObjectType outOfRangeType =
    objectType("a span out of range", outOfRange, checkOutOfRange);

constexpr auto incubator = fields(id<&Incubator::id>("id").must(),
                                  objects<outOfRangeType, &Incubator::outOfRange>("outOfRange"));

} // namespace

constinit const ObjectType indicatorType = objectType("a chemical indicator", indicator);
constinit const ObjectType sheetType = objectType("a Bowie-Dick sheet", sheet);
constinit const ObjectType vialType = objectType("a biological indicator", vial);
constinit const ObjectType controlType = objectType("a control", control);
constinit const ObjectType incubatorType = objectType("an incubator", incubator);

} // namespace loadwarden::evidence_format
