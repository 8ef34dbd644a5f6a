#include "core/desk/registers.h"

#include "core/acts/fold/out_of_range.h"
#include "core/desk/journal_entries.h"
#include "core/desk/newest_facts.h"
#include "core/desk/people.h"
#include "core/desk/today.h"
#include "core/indicators/product.h"

#include <algorithm>

namespace loadwarden {
namespace {

template <class Recorded>
Registered<Recorded> registeredBy(const Fact& fact)
{
    const Entry& entry = fact.current();
    return {.id = fact.origin->subjects.front(),
            .recorded = std::get<Recorded>(entry.act),
            .seq = entry.seq,
            .at = entry.recordedAt.at,
            .by = entry.actor};
}

template <class Recorded>
std::vector<Registered<Recorded>> registerOf(ReadSnapshot& snapshot, std::string_view prefix)
{
    const std::vector<Entry> entries = registerEntries(snapshot, prefix);
    const FactBook book(entries);
    std::vector<Registered<Recorded>> all;
    for (const Fact* const fact : newestFacts<Recorded>(book)) {
        all.push_back(registeredBy<Recorded>(*fact));
    }
    return all;
}

/// Another person's other classing of a code does not take the worse away.
void addAlarm(std::vector<ListedAlarm>& alarms, const ListedAlarm& classed)
{
    const auto found = std::ranges::find(alarms, classed.code, &ListedAlarm::code);
    if (found == alarms.end()) {
        alarms.push_back(classed);
    } else {
        found->effect = std::max(found->effect, classed.effect);
    }
}

std::vector<RegisteredSterilizer> sterilizersOf(ReadSnapshot& snapshot)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "sz");
    const FactBook book(entries);
    std::vector<RegisteredSterilizer> all;
    for (const Fact* const fact : newestFacts<SterilizerRecorded>(book)) {
        RegisteredSterilizer each;
        static_cast<Registered<SterilizerRecorded>&>(each) =
            registeredBy<SterilizerRecorded>(*fact);
        std::vector<Entry> own;
        std::ranges::copy_if(entries, std::back_inserter(own),
                             [&](const Entry& entry) { return entry.subject("sz") == each.id; });
        each.service = serviceAfter(own);
        const FactBook ownBook(own);
        for (const Fact& ownFact : ownBook.facts()) {
            if (!ownFact.stands()) {
                continue;
            }
            if (const auto* const clock = std::get_if<ClockCompared>(&ownFact.current().act)) {
                each.clock = *clock;
            }
            for (const Entry* const version : ownFact.counting) {
                if (const auto* const classed = std::get_if<AlarmClassed>(&version->act)) {
                    addAlarm(each.alarms, classed->alarm);
                }
            }
        }
        all.push_back(std::move(each));
    }
    return all;
}

std::vector<RegisteredLot> lotsOf(ReadSnapshot& snapshot)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "pl");
    const FactBook book(entries);
    std::vector<RegisteredLot> all;
    for (const Fact* const fact : newestFacts<ProductLotRecorded>(book)) {
        RegisteredLot each;
        static_cast<Registered<ProductLotRecorded>&>(each) =
            registeredBy<ProductLotRecorded>(*fact);
        each.product = std::string(fact->current().subject("pr"));
        all.push_back(std::move(each));
    }
    return all;
}

std::vector<RegisteredIncubator> incubatorsOf(ReadSnapshot& snapshot)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "in");
    const FactBook book(entries);
    Folding folding(book);
    std::vector<RegisteredIncubator> all;
    for (const Fact* const fact : newestFacts<IncubatorRecorded>(book)) {
        RegisteredIncubator each;
        static_cast<Registered<IncubatorRecorded>&>(each) = registeredBy<IncubatorRecorded>(*fact);
        each.outOfRange = spansOutOfRange(folding, each.id, false);
        all.push_back(std::move(each));
    }
    return all;
}

std::vector<RegisteredPolicy> policiesOf(ReadSnapshot& snapshot)
{
    const std::vector<Entry> entries = registerEntries(snapshot, "po");
    const FactBook book(entries);
    std::vector<RegisteredPolicy> all;
    for (const Fact& fact : book.facts()) {
        if (fact.stands() && std::holds_alternative<PolicyRecorded>(fact.origin->act)) {
            all.push_back(registeredBy<PolicyRecorded>(fact));
        }
    }
    std::ranges::reverse(all);
    return all;
}

} // namespace

std::optional<Instant> RegisteredIncubator::outSince() const
{
    std::optional<Instant> since;
    for (const OutOfRange& span : outOfRange) {
        if (!span.to) {
            since = since ? std::min(*since, span.from) : span.from;
        }
    }
    return since;
}

bool RegisteredIncubator::isEndedBy(Instant moment) const
{
    return std::ranges::all_of(outOfRange, [moment](const OutOfRange& span) {
        return span.to || span.from <= moment;
    });
}

LotState lotState(const std::optional<Date>& expires, Date day)
{
    if (!expires) {
        return LotState::notStated;
    }
    if (*expires < day) {
        return LotState::expired;
    }
    if (*expires > day + longestShelfDays) {
        return LotState::slip;
    }
    constexpr auto daysOfWarning = static_cast<std::int32_t>(lotWarning.ms / 86'400'000);
    return *expires <= day + daysOfWarning ? LotState::expiresSoon : LotState::inDate;
}

Registers registersOf(ReadSnapshot& snapshot, const Zone& zone, Instant now)
{
    return {.day = zone.dateOf(now),
            .people = peopleOf(snapshot),
            .sterilizers = sterilizersOf(snapshot),
            .specifications = registerOf<SpecificationRecorded>(snapshot, "sp"),
            .products = registerOf<ProductRecorded>(snapshot, "pr"),
            .lots = lotsOf(snapshot),
            .packagings = registerOf<PackagingRecorded>(snapshot, "pk"),
            .devices = registerOf<DeviceRecorded>(snapshot, "dv"),
            .incubators = incubatorsOf(snapshot),
            .policies = policiesOf(snapshot),
            .names = Names(snapshot)};
}

std::string freeSterilizerNumber(const Registers& registers)
{
    for (int number = 1;; ++number) {
        std::string text = std::to_string(number);
        if (std::ranges::none_of(registers.sterilizers, [&](const RegisteredSterilizer& each) {
                return each.id == "sz-" + text;
            })) {
            return text;
        }
    }
}

} // namespace loadwarden
