#include "core/desk/today.h"

#include "core/acts/fold/registers.h"
#include "core/cycle/cycle_words.h"
#include "core/desk/day_cycle.h"
#include "core/desk/floor.h"
#include "core/desk/journal_entries.h"
#include "core/desk/service_now.h"
#include "core/store/finder.h"

#include <algorithm>
#include <map>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCycles = 2'000; ///< a day's, and those that are open

/// The earlier of two moments that may be missing.
void takeEarlier(std::optional<Instant>& earliest, std::optional<Instant> other, Instant after)
{
    if (other && *other > after && (!earliest || *other < *earliest)) {
        earliest = other;
    }
}

/// The cycles that were looked at, each once.
class Views {
public:
    Views(ReadSnapshot& snapshot, EntryCache& cache, Instant now) : m_views(snapshot, cache, now) {}

    /// Null where nothing was recorded of it.
    const CycleView* of(const std::string& cycle)
    {
        const auto [place, isNew] = m_seen.try_emplace(cycle);
        if (isNew) {
            place->second = m_views.of(cycle);
        }
        return place->second ? &*place->second : nullptr;
    }

private:
    CycleViews m_views;
    std::map<std::string, std::optional<CycleView>> m_seen;
};

/// Whether air-removal tests are run on it: one was within the time that is looked back, or a load
/// of it asks for one.
bool asksForTest(const std::vector<FoundCycle>& cycles, Views& views)
{
    return std::ranges::any_of(cycles, [&](const FoundCycle& cycle) {
        if (cycle.purpose == wordOf(purposeWords, Purpose::bowieDick)) {
            return true;
        }
        if (cycle.disposed != 0 || !cycle.hasEnded) {
            return false;
        }
        const CycleView* const view = views.of(cycle.id);
        return view != nullptr
               && std::ranges::any_of(view->decision.findings, [](const Finding& finding) {
                      return ruleOf(finding.key) == RuleId::airRemoval;
                  });
    });
}

PeriodTest stateOf(const DayCycle& test)
{
    if (!test.test) {
        return PeriodTest::notRead;
    }
    switch (*test.test) {
    case TestResult::failed: return PeriodTest::failed;
    case TestResult::voided: return PeriodTest::voided;
    case TestResult::pending: return PeriodTest::notRead;
    case TestResult::passed: return PeriodTest::passed;
    }
    return PeriodTest::notRead;
}

class Making {
public:
    Making(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone, Instant now)
        : m_snapshot(snapshot), m_zone(zone), m_views(snapshot, cache, now), m_now(now)
    {
        m_today.now = now;
        m_today.day = zone.dateOf(now);
        m_today.dayBegin = zone.resolve(m_today.day, 0);
        m_today.dayEnd = zone.resolve(m_today.day + 1, 0);
        takeEarlier(m_today.nextChangeAt, m_today.dayEnd, now);
    }

    Today make()
    {
        sterilizers();
        loads();
        lots();
        m_today.hasSpecification = !registerEntries(m_snapshot, "sp").empty();
        sortNeeds(m_today.needs);
        return std::move(m_today);
    }

private:
    void sterilizers()
    {
        const std::vector<Entry> entries = registerEntries(m_snapshot, "sz");
        const FactBook book(entries);
        for (const Fact& fact : book.facts()) {
            const auto* const recorded = std::get_if<SterilizerRecorded>(&fact.current().act);
            const std::string& id = fact.origin->subjects.front();
            if (recorded != nullptr
                && peekRevision<SterilizerRecorded>(book, id, newest) == &fact) {
                sterilizer(id, *recorded, serviceIn(book, id));
            }
        }
    }

    void sterilizer(const std::string& id, const SterilizerRecorded& recorded, ServiceNow service)
    {
        const int testMinute = static_cast<int>(recorded.testMinute);
        const Date period = m_zone.periodOf(m_now, testMinute);
        SterilizerDay day{.id = id,
                          .name = recorded.name,
                          .model = recorded.model,
                          .service = service.state,
                          .why = std::move(service.why),
                          .since = service.since,
                          .periodBegin = m_zone.periodBegin(period, testMinute),
                          .now = {},
                          .testRun = {},
                          .cycles = {}};
        takeEarlier(m_today.nextChangeAt, m_zone.periodBegin(period + 1, testMinute), m_now);
        const std::vector<FoundCycle> cycles =
            Finder(m_snapshot).cyclesBetween(id, (m_now - lookBack).ms, m_now.ms, mostCycles * 2);
        for (const FoundCycle& found : cycles) {
            const bool isOfDay = Instant{found.at} >= m_today.dayBegin;
            const bool isTest = found.purpose == wordOf(purposeWords, Purpose::bowieDick);
            const bool isOfPeriod = isTest && Instant{found.at} >= day.periodBegin;
            if (!isOfDay && !isOfPeriod && found.hasEnded) {
                continue;
            }
            const CycleView* const view = m_views.of(found.id);
            if (view == nullptr) {
                continue;
            }
            DayCycle cycle = dayCycleOf(*view, found);
            if (isOfPeriod && cycle.phase != Phase::beingLoaded) {
                day.testRun = cycle;
            }
            if (cycle.phase == Phase::running || cycle.phase == Phase::beingLoaded) {
                day.now = cycle;
            }
            if (isOfDay && cycle.start) {
                count(cycle);
                day.cycles.push_back(std::move(cycle));
            }
        }
        if (day.testRun) {
            day.test = stateOf(*day.testRun);
        } else if (asksForTest(cycles, m_views)) {
            day.test = PeriodTest::notRun;
        }
        testNeed(day);
        m_today.sterilizers.push_back(std::move(day));
    }

    void count(const DayCycle& cycle)
    {
        if (!cycle.isTest()) {
            ++m_today.loadsToday;
            m_today.signedToday += cycle.signedAs ? 1 : 0;
        }
    }

    void testNeed(const SterilizerDay& day)
    {
        if (day.service != ServiceState::inService) {
            return; // what is out of service is tested before it returns
        }
        Need need{.kind = NeedKind::testNotRun,
                  .cycle = day.testRun ? day.testRun->id : "",
                  .lot = day.testRun ? day.testRun->lot : "",
                  .sterilizer = day.id,
                  .subject = {},
                  .name = {},
                  .at = {},
                  .findings = {}};
        switch (day.test) {
        case PeriodTest::notAsked:
        case PeriodTest::passed: return;
        case PeriodTest::notRun:
        case PeriodTest::voided: need.at = day.periodBegin; break;
        case PeriodTest::failed: need.kind = NeedKind::testFailed; break;
        case PeriodTest::notRead:
            if (!day.testRun->end) {
                return; // it runs
            }
            need.kind = NeedKind::testNotRead;
            need.at = day.testRun->end;
            break;
        }
        m_today.needs.push_back(std::move(need));
    }

    void loads()
    {
        Finder finder(m_snapshot);
        std::vector<FoundCycle> cycles = finder.openLoads(mostCycles);
        const auto changed = finder.saidAfterDisposition((m_now - lookBack).ms, mostCycles);
        cycles.insert(cycles.end(), changed.begin(), changed.end());
        addReported(finder, cycles);
        for (const FoundCycle& found : cycles) {
            const CycleView* const view = m_views.of(found.id);
            if (view != nullptr) {
                appendNeeds(*view, m_today.needs);
                takeEarlier(m_today.nextChangeAt, view->decision.nextChangeAt, m_now);
            }
        }
    }

    /// A report comes when an item is opened, which may be long after its load.
    void addReported(Finder& finder, std::vector<FoundCycle>& cycles)
    {
        for (const Entry& entry : fromFloorSince(m_snapshot, m_zone.dateOf(m_now - lookBack))) {
            const std::string_view cycle = entry.subject("ld");
            const bool isThere = std::ranges::find(cycles, cycle, &FoundCycle::id) != cycles.end();
            if (cycle.empty() || isThere) {
                continue;
            }
            if (auto found = finder.cycle(cycle); found && found->newest > found->disposed) {
                cycles.push_back(*std::move(found));
            }
        }
    }

    void lots()
    {
        const std::vector<Entry> entries = registerEntries(m_snapshot, "pl");
        const FactBook book(entries);
        for (const Fact& fact : book.facts()) {
            const auto* const lot = std::get_if<ProductLotRecorded>(&fact.current().act);
            const std::string& id = fact.origin->subjects.front();
            if (fact.stands() && std::holds_alternative<LotRecalled>(fact.current().act)) {
                recalled(book, fact);
            }
            if (lot == nullptr || !lot->expires
                || peekRevision<ProductLotRecorded>(book, id, newest) != &fact) {
                continue;
            }
            const Instant expires = m_zone.resolve(*lot->expires + 1, 0);
            takeEarlier(m_today.nextChangeAt, expires - lotWarning, m_now);
            takeEarlier(m_today.nextChangeAt, expires, m_now);
            if (expires > m_now + lotWarning || expires < m_now - lookBack) {
                continue;
            }
            m_today.needs.push_back({.kind = NeedKind::lotExpires,
                                     .cycle = {},
                                     .lot = lot->number,
                                     .sterilizer = {},
                                     .subject = id,
                                     .name = productName(fact.origin->subject("pr")),
                                     .at = expires,
                                     .findings = {}});
        }
    }

    /// What was released with it is nobody's need of its own: its loads are looked for.
    void recalled(const FactBook& book, const Fact& recall)
    {
        const Instant at = recall.current().recordedAt.at;
        if (at < m_now - lookBack) {
            return;
        }
        const std::string id(recall.origin->subject("pl"));
        const auto* const known = peekRevision<ProductLotRecorded>(book, id, newest);
        m_today.needs.push_back(
            {.kind = NeedKind::lotRecalled,
             .cycle = {},
             .lot =
                 known == nullptr ? id : std::get<ProductLotRecorded>(known->current().act).number,
             .sterilizer = {},
             .subject = id,
             .name = productName(recall.origin->subject("pr")),
             .at = at,
             .findings = {}});
    }

    std::string productName(std::string_view product)
    {
        if (m_products.empty()) {
            m_products = registerEntries(m_snapshot, "pr");
        }
        std::string name;
        for (const Entry& entry : m_products) {
            const auto* const recorded = std::get_if<ProductRecorded>(&entry.act);
            if (recorded != nullptr && entry.isAbout(product)) {
                name = recorded->name;
            }
        }
        return name;
    }

    ReadSnapshot& m_snapshot;
    const Zone& m_zone;
    Views m_views;
    Instant m_now;
    Today m_today;
    std::vector<Entry> m_products;
};

} // namespace

Today todayOf(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone, Instant now)
{
    return Making(snapshot, cache, zone, now).make();
}

} // namespace loadwarden
