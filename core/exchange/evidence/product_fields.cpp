#include "core/exchange/evidence/complaints.h"
#include "core/exchange/evidence/json_pointer.h"
#include "core/exchange/evidence/object_types.h"
#include "core/indicators/indicator_words.h"
#include "core/indicators/product.h"
#include "core/packaging/packaging.h"
#include "core/packaging/packaging_words.h"

// What instructions for use say: of indicator products and their lots, of packagings.

namespace loadwarden::evidence_format {

namespace {

constexpr Field typeElement{
    "", NumberRule{0, 1, 6,
                   [](void* list, std::int64_t value, std::string_view) {
                       static_cast<std::vector<int>*>(list)->push_back(static_cast<int>(value));
                   },
                   [](const void* element) -> Fetched<Number> {
                       return {Stated::yes, {.scaled = *static_cast<const int*>(element)}};
                   }}};

constexpr Field implantTypes{
    "implantIndicatorTypes",
    ListRule{1,
             [](void* owner) -> void* {
                 return &memberAt<&IndicatorProduct::implantIndicatorTypes>(owner);
             },
             &typeElement, elementAt<&IndicatorProduct::implantIndicatorTypes>}};

bool isChemical(const void* product)
{
    return static_cast<const IndicatorProduct*>(product)->kind == IndicatorKind::chemical;
}

bool isBiological(const void* product)
{
    return static_cast<const IndicatorProduct*>(product)->kind == IndicatorKind::biological;
}

constexpr auto commonFields =
    fields(id<&IndicatorProduct::id>("id").must(),
           word<indicatorKindWords, &IndicatorProduct::kind>("kind").must(),
           methods<&IndicatorProduct::methods>("methods").must(),
           ids<&IndicatorProduct::cycleTypes>("cycleTypes", 1),
           word<responseWords, &IndicatorProduct::response>("response").must());

constexpr auto chemicalFields =
    fields(whole<&IndicatorProduct::type>("type", 1, 6).mustIn(isChemical),
           whole<&IndicatorProduct::readWithinMinutes>("readWithinMinutes", 1, 10'000'000),
           minutesAsMs<&IndicatorProduct::sheet, &SheetDirections::leastMs>("leastMinutes"),
           minutesAsMs<&IndicatorProduct::sheet, &SheetDirections::mostMs>("mostMinutes"),
           celsiusHundredths<&IndicatorProduct::sheet, &SheetDirections::leastCelsiusHundredths>(
               "leastCelsius"),
           celsiusHundredths<&IndicatorProduct::sheet, &SheetDirections::mostCelsiusHundredths>(
               "mostCelsius"),
           flag<&IndicatorProduct::sheet, &SheetDirections::dryingForbidden>("dryingForbidden"));

constexpr auto biologicalFields = fields(
    word<speciesWords, &IndicatorProduct::species>("species").mustIn(isBiological),
    whole<&IndicatorProduct::releaseMinutes>("releaseMinutes", 1, 100'000).mustIn(isBiological),
    whole<&IndicatorProduct::lastMinutes>("lastMinutes", 1, 100'000),
    whole<&IndicatorProduct::latestMinutes>("latestMinutes", 1, 1'000'000),
    whole<&IndicatorProduct::startWithinMinutes>("startWithinMinutes", 1, 1'000'000),
    flag<&IndicatorProduct::needsActivation>("needsActivation"),
    flag<&IndicatorProduct::hasProcessIndicator>("hasProcessIndicator"),
    word<controlReachWords, &IndicatorProduct::control>("control"), implantTypes);

constexpr auto product = join(commonFields, chemicalFields, biologicalFields);

constexpr std::size_t chemicalBegin = commonFields.size();
constexpr std::size_t biologicalBegin = chemicalBegin + chemicalFields.size();

/// A chemical product has no biological fields and the other way round; each needs some of its own.
bool checkProduct(void* object, FieldSet present, Complaint& complaint)
{
    const auto& checked = *static_cast<const IndicatorProduct*>(object);
    const bool biological = checked.kind == IndicatorKind::biological;
    const std::string_view kind = indicatorKindWords[biological ? 1 : 0].text;
    const std::size_t strangeBegin = biological ? chemicalBegin : biologicalBegin;
    const std::size_t strangeEnd = biological ? biologicalBegin : product.size();
    for (std::size_t i = strangeBegin; i < strangeEnd; ++i) {
        if ((present >> i & 1U) != 0) {
            complaint.field = pointerStep(product[i].name);
            complaint.message = "a " + std::string(kind) + " indicator product has no field "
                                + quoted(product[i].name);
            return false;
        }
    }
    for (const Field& field : product) {
        if (field.isNeededIn(object) && (present & bitOf(product, field.name)) == 0) {
            complaint.message = "a " + std::string(kind) + " indicator product needs the field "
                                + quoted(field.name);
            return false;
        }
    }
    if (biological != (checked.response == Response::growth)) {
        complaint.field = "/response";
        complaint.message = biological
                                ? "a biological indicator product answers by \"growth\""
                                : "a chemical indicator product answers by \"moving-front\", "
                                  "\"colour\" or \"sheet\"";
        return false;
    }
    return true;
}

constexpr auto lot =
    fields(id<&IndicatorLot::product>("product").must(), id<&IndicatorLot::number>("number").must(),
           date<&IndicatorLot::expires>("expires"),
           flag<&IndicatorLot::recalled>("recalled"));

constexpr auto packaging =
    fields(id<&Packaging::id>("id").must(), word<packageFormWords, &Packaging::form>("form").must(),
           methods<&Packaging::methods>("methods"),
           whole<&Packaging::aerationMinutes>("aerationMinutes", 0, 100'000));

} // namespace

constinit const ObjectType productType = objectType("an indicator product", product, checkProduct);
constinit const ObjectType lotType = objectType("an indicator lot", lot);
constinit const ObjectType packagingType = objectType("a packaging", packaging);

} // namespace loadwarden::evidence_format
