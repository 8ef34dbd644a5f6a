#include "core/desk/indicator_answer.h"

#include "core/desk/choices.h"
#include "core/desk/journal_entries.h"
#include "core/desk/newest_facts.h"
#include "core/indicators/front.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <map>

namespace loadwarden {
namespace {

template <class Act>
std::map<std::string, Act> newestOf(ReadSnapshot& snapshot, std::string_view prefix)
{
    std::map<std::string, Act> all;
    const std::vector<Entry> entries = registerEntries(snapshot, prefix);
    const FactBook book(entries);
    for (const Fact* const fact : newestFacts<Act>(book)) {
        all.emplace(fact->origin->subjects.front(), std::get<Act>(fact->current().act));
    }
    return all;
}

TypeSet typesAt(std::optional<IndicatorUsedAt> place, Method method, const Policy& policy)
{
    if (!place) {
        return {1, 2, 3, 4, 5, 6};
    }
    if (method == Method::unknown) { // only what counts whatever it was
        TypeSet both;
        for (int type = 1; type <= 6; ++type) {
            if (typesAt(place, Method::steam, policy).contains(type)
                && typesAt(place, Method::dryHeat, policy).contains(type)) {
                both.add(type);
            }
        }
        return both;
    }
    switch (*place) {
    case IndicatorUsedAt::outside: return {1};
    case IndicatorUsedAt::pcd:
        return method == Method::steam ? policy.pcdTypesSteam : policy.pcdTypesOther;
    case IndicatorUsedAt::inside:
        return method == Method::steam ? policy.internalTypesSteam : policy.internalTypesOther;
    }
    return {};
}

} // namespace

std::vector<ReadableLot> readableLots(ReadSnapshot& snapshot)
{
    const auto products = newestOf<ProductRecorded>(snapshot, "pr");
    std::vector<ReadableLot> lots;
    for (const LotChoice& each : choicesOf(snapshot).lots) {
        ReadableLot lot{.lot = each.lot,
                        .name = each.productName,
                        .product = products.at(each.product).product,
                        .number = {.product = each.product,
                                   .number = each.number,
                                   .expires = each.expires,
                                   .recalled = each.isRecalled},
                        .directions = each.directions};
        lot.product.id = each.product;
        lots.push_back(std::move(lot));
    }
    return lots;
}

std::vector<ReadableLot> readableLots(ReadSnapshot& snapshot, std::string_view number)
{
    std::vector<ReadableLot> lots = readableLots(snapshot);
    std::erase_if(lots, [number](const ReadableLot& each) {
        return each.lot != number && !isSamePerson(each.number.number, number);
    });
    return lots;
}

std::optional<Seen> seenAt(const ReadingDirections& directions, std::int64_t tenthsMm)
{
    const std::optional<int> boundary = boundaryOf(directions);
    if (!boundary || tenthsMm < 0 || tenthsMm > *directions.stripTenthsMm) {
        return std::nullopt;
    }
    const std::int64_t strip = *directions.stripTenthsMm;
    return seenOfFront(static_cast<int>((tenthsMm * wholeStrip + strip / 2) / strip), *boundary);
}

IndicatorAnswer answerIndicator(const ReadableLot& lot, Seen seen, Method method,
                                std::optional<IndicatorUsedAt> place, const Policy& policy,
                                Date day)
{
    IndicatorRegister known;
    known.products.push_back(lot.product);
    known.lots.push_back(lot.number);
    // Read as somebody reads who does it right: signed, from the end on, in time.
    const Instant end = firstMoment + Duration::hours(1);
    const Act act{.by = "reader", .role = Role::operating, .happenedAt = end, .recordedAt = end};
    const CycleContext cycle{.day = day,
                             .end = end,
                             .method = method,
                             .cycleType = {},
                             .lot = {},
                             .asksCycleType = false};
    ChemicalIndicator indicator;
    indicator.link = {.product = 0, .lot = 0};
    indicator.readings.push_back({.seen = seen, .act = act});
    prepareChemical(indicator, cycle, known);
    const ChemicalJudgement judged = judgeChemical(indicator, typesAt(place, method, policy), end);
    return {.state = judged.state, .cause = judged.cause};
}

} // namespace loadwarden
