#include "core/desk/loads_at_hand.h"

#include "core/desk/day_cycle.h"
#include "core/desk/names.h"
#include "core/desk/today.h"
#include "core/store/finder.h"

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCycles = 500;

} // namespace

bool isWorseNow(const DayCycle& cycle)
{
    return cycle.isWorse;
}

AtHand waitsFor(const DayCycle& cycle)
{
    switch (cycle.phase) {
    case Phase::beingLoaded:
    case Phase::running: return AtHand::atWork;
    case Phase::imported: return AtHand::done;
    case Phase::awaitingDecision:
        return cycle.test && *cycle.test != TestResult::pending ? AtHand::done : AtHand::undecided;
    // What was read later and is good changes nothing that anybody waits for.
    case Phase::disposed:
    case Phase::evidenceChanged:
        return isWorseNow(cycle) || cycle.signedAs == Verdict::quarantine ? AtHand::undecided
                                                                          : AtHand::done;
    }
    return AtHand::undecided;
}

std::vector<CycleAtHand> cyclesAtHand(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone,
                                      Instant now)
{
    const Date day = zone.dateOf(now);
    Finder finder(snapshot);
    std::vector<FoundCycle> found = finder.openLoads(mostCycles);
    const Instant begin = zone.resolve(day, 0);
    for (FoundCycle& cycle : finder.cyclesBetween({}, begin.ms, zone.resolve(day + 1, 0).ms - 1,
                                                  mostCycles)) {
        found.push_back(std::move(cycle));
    }
    // What was signed on an earlier day and is held, or has become worse since.
    for (FoundCycle& cycle :
         finder.saidAfterDisposition((now - lookBack).ms, mostCycles)) {
        found.push_back(std::move(cycle));
    }
    const Names names(snapshot);
    CycleViews views(snapshot, cache, now);
    std::set<std::string> seen;
    std::vector<std::pair<std::int64_t, CycleAtHand>> rows;
    for (const FoundCycle& cycle : found) {
        if (!seen.insert(cycle.id).second) {
            continue;
        }
        const auto view = views.of(cycle.id);
        if (!view) {
            continue;
        }
        CycleAtHand row{dayCycleOf(*view, cycle), names.of(cycle.sterilizer)};
        const bool isOfToday = cycle.at >= begin.ms && cycle.at < zone.resolve(day + 1, 0).ms;
        if (isOfToday || waitsFor(row.cycle) != AtHand::done) {
            rows.emplace_back(cycle.at, std::move(row));
        }
    }
    std::ranges::stable_sort(rows, [](const auto& a, const auto& b) {
        const AtHand first = waitsFor(a.second.cycle);
        const AtHand second = waitsFor(b.second.cycle);
        return first != second ? first < second : a.first > b.first;
    });
    std::vector<CycleAtHand> cycles;
    for (auto& [at, row] : rows) {
        cycles.push_back(std::move(row));
    }
    return cycles;
}

} // namespace loadwarden
