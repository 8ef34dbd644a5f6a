#include "core/acts/fold/sterilizer_fold.h"

#include "core/acts/fold/registers.h"
#include "core/acts/fold/seen.h"

#include <algorithm>

namespace loadwarden {
namespace {

void foldIncidents(Folding& folding, std::string_view id, SterilizerRecord& record)
{
    std::vector<std::string_view> ids; // beside record.incidents
    folding.eachValue<IncidentOpened>(id, false, [&](const Entry& entry, const IncidentOpened&) {
        const std::string_view incident = entry.subject("ic");
        if (std::ranges::find(ids, incident) != ids.end()) {
            // Closings end the first that has the id.
            folding.misfit(entry, MisfitWhy::saidTwice);
        }
        ids.push_back(incident);
        record.incidents.push_back(
            {.positiveLot = std::string(entry.subject("ld")), .closings = {}});
    });
    folding.eachValue<IncidentClosed>(id, false, [&](const Entry& entry, const IncidentClosed&) {
        const auto found = std::ranges::find(ids, entry.subject("ic"));
        if (found == ids.end()) {
            folding.misfit(entry, MisfitWhy::notOpen);
            return;
        }
        record.incidents[static_cast<std::size_t>(found - ids.begin())].closings.push_back(
            {std::string(entry.subject("ld")), actOf(entry)});
    });
}

/// Whether a vial of the cycle has an answer that only an incident ends.
bool hasPositive(const HistoryCycle& cycle)
{
    return std::ranges::any_of(cycle.vials, [](const Vial& vial) {
        return vial.unsettled
               || std::ranges::any_of(vial.readings, [](const IndicatorReading& reading) {
                      return rankOf(reading.seen, false) != SeenRank::good;
                  });
    });
}

} // namespace

SterilizerFold foldSterilizer(Folding& folding, std::string_view id, std::string_view except)
{
    SterilizerFold fold;
    SterilizerRecord& record = fold.record;
    record.id = id;
    if (const auto* recorded = findRecorded<SterilizerRecorded>(folding, id)) {
        record.id = recorded->name;
        record.model = recorded->model;
        record.testMinute = static_cast<int>(recorded->testMinute);
        record.recordsConcentration = recorded->recordsConcentration;
        record.recordsHumidity = recorded->recordsHumidity;
        record.aeration = recorded->aeration;
    }
    folding.eachValue<AlarmClassed>(id, false, [&](const Entry&, const AlarmClassed& act) {
        record.alarms.push_back(act.alarm);
    });
    folding.eachValue<ClockCompared>(id, false, [&](const Entry&, const ClockCompared& act) {
        record.clockOffsets.push_back({act.from.at, Duration::seconds(act.seconds)});
    });
    // Returns and the rest in one order: that of their entries.
    for (const std::uint32_t index : folding.book().about(id)) {
        const Fact& fact = folding.book().facts()[index];
        const bool returned = std::holds_alternative<SterilizerReturned>(fact.origin->act);
        if (!returned && !std::holds_alternative<SterilizerTakenOut>(fact.origin->act)) {
            continue;
        }
        folding.take(fact, false);
        if (!fact.stands()) {
            continue;
        }
        for (const Entry* const entry : fact.counting) {
            const ServiceState state =
                returned ? ServiceState::inService : std::get<SterilizerTakenOut>(entry->act).state;
            record.service.push_back({state, actOf(*entry)});
        }
    }
    foldIncidents(folding, id, record);

    std::vector<std::string_view> seen;
    for (const std::uint32_t index : folding.book().about(id)) {
        const Fact& fact = folding.book().facts()[index];
        const std::string_view cycle = fact.origin->subject("ld");
        if (!std::holds_alternative<CycleReserved>(fact.origin->act) || cycle == except
            || std::ranges::find(seen, cycle) != seen.end()) {
            continue;
        }
        seen.push_back(cycle);
        CycleFold folded = foldCycle(folding, cycle, false);
        // A positive does not go with a reservation or a start that was voided.
        const bool isHere = folded.sterilizer == id && folded.hasStarted();
        const bool wasHere = folded.sterilizer == id || folded.sterilizer.empty();
        if (isHere || (wasHere && hasPositive(folded.cycle))) {
            record.cycles.push_back(std::move(folded.cycle));
            fold.cycleIds.push_back(std::move(folded.id));
        }
    }
    return fold;
}

} // namespace loadwarden
