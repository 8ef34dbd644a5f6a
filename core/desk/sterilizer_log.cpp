#include "core/desk/sterilizer_log.h"

#include "core/desk/cycle_record.h"
#include "core/desk/journal_entries.h"
#include "core/desk/service_now.h"
#include "core/store/finder.h"

#include <algorithm>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCycles = 2'000; ///< of a sterilizer's day

/// Whether an act is about the sterilizer itself and of the day's work, not of its cycles.
bool isOfService(const AnyAct& act)
{
    return std::holds_alternative<SterilizerTakenOut>(act)
           || std::holds_alternative<SterilizerReturned>(act)
           || std::holds_alternative<ClockCompared>(act)
           || std::holds_alternative<AlarmClassed>(act)
           || std::holds_alternative<IncidentOpened>(act)
           || std::holds_alternative<IncidentClosed>(act)
           || std::holds_alternative<SterilizerRecorded>(act)
           || std::holds_alternative<EntryVoided>(act)
           || std::holds_alternative<EntryAnnotated>(act);
}

std::optional<Entry> dispositionOf(ReadSnapshot& snapshot, const CycleView& view)
{
    std::optional<Entry> newest;
    for (Entry& entry : entriesAbout(snapshot, view.id)) {
        if (entry.seq <= view.seen && std::holds_alternative<DispositionSigned>(entry.act)) {
            newest = std::move(entry);
        }
    }
    return newest;
}

} // namespace

SterilizerLog logOfSterilizer(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone,
                              const std::string& sterilizer, Date day, Instant now,
                              std::int64_t upTo)
{
    const Instant begin = zone.resolve(day, 0);
    const Instant end = zone.resolve(day + 1, 0);
    SterilizerLog log{.sterilizer = sterilizer,
                      .day = day,
                      .now = now,
                      .cycles = {},
                      .own = {},
                      .names = Names(snapshot),
                      .head = headAt(snapshot, std::min(upTo, JournalReader(snapshot).head().seq))};
    Finder finder(snapshot);
    CycleViews views(snapshot, cache, now, upTo);
    for (const FoundCycle& found :
         finder.cyclesBetween(sterilizer, begin.ms, end.ms - 1, mostCycles)) {
        auto view = views.of(found.id);
        if (view) {
            log.names.set(found.id, found.lot);
            auto disposition = dispositionOf(snapshot, *view);
            log.cycles.push_back({*std::move(view), std::move(disposition)});
        }
    }
    std::vector<Entry> service = entriesAbout(snapshot, sterilizer);
    std::erase_if(service, [&](const Entry& entry) {
        return entry.seq > upTo || entry.recordedAt.at >= end || !isOfService(entry.act);
    });
    log.service = serviceAfter(service).state;
    std::erase_if(service, [&](const Entry& entry) { return entry.recordedAt.at < begin; });
    log.own = std::move(service);
    return log;
}

} // namespace loadwarden
