#include "core/exchange/evidence/object_types.h"
#include "core/loads/load_words.h"
#include "core/sterilizers/sterilizer_words.h"

// Another cycle of the sterilizer: a load or a test.

namespace loadwarden::evidence_format {

namespace {

constexpr auto failure = join(fields(word<failureKindWords, &ProcessFailure::kind>("kind").must()),
                              actFields<&ProcessFailure::act>());

constinit const ObjectType failureType =
    signedType<&ProcessFailure::act>("a process failure", failure);

constexpr auto resolution = join(fields(word<causeWords, &Resolution::causeKnown>("cause").must(),
                                        word<reachWords, &Resolution::reach>("reach").must(),
                                        text<&Resolution::what>("what")),
                                 actFields<&Resolution::act>());

constinit const ObjectType resolutionType =
    signedType<&Resolution::act>("a resolution", resolution);

constexpr auto exposure =
    fields(minutesAsMs<&HistoryCycle::exposureMs>("minutes"),
           celsiusHundredths<&HistoryCycle::exposureCelsiusHundredths>("celsius"));

constinit const ObjectType exposureType = objectType("the exposure of a test", exposure);

constexpr auto voidReason =
    join(fields(text<&SignedReason::why>("why").must()), actFields<&SignedReason::act>());

constinit const ObjectType voidReasonType =
    signedType<&SignedReason::act>("the reason of a void test", voidReason);

constexpr Field riseMbar{
    "riseMbar", NumberRule{3, -1'000'000, 1'000'000,
                           [](void* owner, std::int64_t value, std::string_view) {
                               static_cast<LeakReading*>(owner)->riseThousandthsMbar = value;
                           },
                           [](const void* owner) {
                               return fetched<&LeakReading::riseThousandthsMbar>(
                                   owner,
                                   [](std::int64_t value) { return Number{.scaled = value}; });
                           }}};

constexpr auto leak = join(fields(minutesAsMs<&LeakReading::settledMs>("settledMinutes"),
                                  minutesAsMs<&LeakReading::testMs>("minutes"), riseMbar),
                           actFields<&LeakReading::act>());

constinit const ObjectType leakType = signedType<&LeakReading::act>("a leak reading", leak);

constexpr auto physical = join(fields(flag<&PhysicalStatement::good>("good").must()),
                               actFields<&PhysicalStatement::act>());

constinit const ObjectType physicalType =
    signedType<&PhysicalStatement::act>("the statement about a physical record", physical);

/// A test that has not started has none, and no other to be written in its place.
Fetched<Instant> fetchStart(const void* owner)
{
    const Instant start = static_cast<const HistoryCycle*>(owner)->start;
    return start == Instant{} ? Fetched<Instant>{} : Fetched<Instant>{Stated::yes, start};
}

constexpr Field start{
    "start",
    TimeRule{[](void* owner, Instant value) { static_cast<HistoryCycle*>(owner)->start = value; },
             fetchStart},
    true};

constexpr auto cycle = fields(
    word<cycleKindWords, &HistoryCycle::kind>("kind").must(), id<&HistoryCycle::lot>("lot").must(),
    word<methodWords, &HistoryCycle::method>("method"), id<&HistoryCycle::cycleType>("cycleType"),
    word<clockWords, &HistoryCycle::clock>("clock"), start, time<&HistoryCycle::end>("end"),
    whole<&HistoryCycle::counter>("counter", 0, 1'000'000'000),
    word<outcomeWords, &HistoryCycle::outcome>("outcome"), ids<&HistoryCycle::items>("items"),
    objects<failureType, &HistoryCycle::failures>("failures"),
    whole<&HistoryCycle::packagesRejectedOrWet>("packagesRejectedOrWet", 0, 100'000),
    objects<resolutionType, &HistoryCycle::resolutions>("resolutions"),
    objects<vialType, &HistoryCycle::vials>("vials"),
    object<sheetType, &HistoryCycle::sheet>("sheet"), objectSpread<exposureType>("exposure"),
    flag<&HistoryCycle::chamberEmpty>("chamberEmpty"), flag<&HistoryCycle::dryingRun>("dryingRun"),
    object<voidReasonType, &HistoryCycle::voidReason>("voidReason"),
    object<leakType, &HistoryCycle::leak>("leak"),
    object<physicalType, &HistoryCycle::physical>("physical"),
    objects<indicatorType, &HistoryCycle::indicators>("indicators"));

} // namespace

constinit const ObjectType cycleType = objectType("a cycle", cycle);

} // namespace loadwarden::evidence_format
