#include "core/desk/day_cycle.h"

#include "core/cycle/cycle_words.h"
#include "core/sterilizers/clock_offset.h"

#include <algorithm>

namespace loadwarden {
namespace {

Instant byFacility(Instant shown, ClockSource clock, const EvidenceRecord& record)
{
    if (clock == ClockSource::facility || !record.sterilizer) {
        return shown;
    }
    const auto offset = offsetAt(record.sterilizer->clockOffsets, shown);
    return offset ? shown - *offset : shown;
}

} // namespace

DayCycle dayCycleOf(const CycleView& view, const FoundCycle& found)
{
    const EvidenceRecord& record = view.folded.record;
    DayCycle cycle{.id = view.id,
                   .lot = view.lot(),
                   .purpose = valueOf(purposeWords, found.purpose).value_or(Purpose::routine),
                   .phase = view.folded.phase,
                   .start = {},
                   .end = {},
                   .decided = {},
                   .signedAs = view.signedAs,
                   .isWorse = isWorseThanSigned(view),
                   .behind = 0,
                   .test = {}};
    const bool hasEnded = cycle.phase != Phase::beingLoaded && cycle.phase != Phase::running;
    if (view.isTest()) {
        if (cycle.phase != Phase::beingLoaded) {
            cycle.start = byFacility(record.test->start, record.test->clock, record);
        }
        if (record.test->end) {
            cycle.end = byFacility(*record.test->end, record.test->clock, record);
        }
        if (hasEnded) {
            cycle.test = view.judgement.result;
        }
        return cycle;
    }
    if (record.load.start) {
        cycle.start = byFacility(*record.load.start, record.load.clock, record);
    }
    if (record.load.end) {
        cycle.end = byFacility(*record.load.end, record.load.clock, record);
    }
    if (hasEnded) {
        cycle.decided = view.decision.verdict;
        cycle.behind = std::ranges::count_if(view.decision.items, [&](const ItemDecision& item) {
            return item.verdict > view.decision.verdict;
        });
    }
    return cycle;
}

} // namespace loadwarden
