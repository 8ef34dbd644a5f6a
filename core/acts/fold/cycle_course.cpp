#include "core/acts/fold/cycle_parts.h"
#include "core/acts/fold/imported.h"
#include "core/acts/fold/registers.h"

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

CycleKind kindOf(Purpose purpose)
{
    switch (purpose) {
    case Purpose::warmUp: return CycleKind::warmUp;
    case Purpose::bowieDick: return CycleKind::bowieDick;
    case Purpose::leak: return CycleKind::leak;
    case Purpose::qualification: return CycleKind::qualification;
    case Purpose::routine:
    case Purpose::immediateUse: break;
    }
    return CycleKind::load;
}

/// Says of every value but the first that it was said before.
template <class Act>
void saidTwice(Folding& folding, const Said<Act>& said)
{
    for (std::size_t i = 1; i < said.values.size(); ++i) {
        folding.misfit(*said.values[i].entry, MisfitWhy::saidTwice);
    }
}

/// The specification that was bound at the start; null where none was, or one for another purpose.
void bindSpecification(Folding& folding, CycleFold& into, const Said<CycleReserved>& reserved,
                       const Said<CycleStarted>& started)
{
    std::string_view id = started.first().entry->subject("sp");
    if (id.empty() && !reserved.empty()) {
        id = reserved.first().entry->subject("sp");
    }
    if (id.empty()) {
        return;
    }
    const Fact* const found = findRevision<SpecificationRecorded>(folding, id, into.boundAt);
    if (found == nullptr) {
        folding.misfit(*started.first().entry, MisfitWhy::unknownReference);
        return;
    }
    const auto& recorded = std::get<SpecificationRecorded>(found->current().act).specification;
    if (recorded.purpose != into.purpose) {
        folding.misfit(*started.first().entry, MisfitWhy::otherPurpose);
        return;
    }
    into.specification = found;
    into.cycle.method = recorded.method;
    into.cycle.cycleType = recorded.cycleType;
}

/// The phase of an abort; one in any other phase than drying, or in none that was stated, is the
/// worse of several.
std::optional<AbortPhase> worstPhase(const Said<CycleEnded>& ended)
{
    std::optional<AbortPhase> phase = AbortPhase::drying;
    for (const auto& value : ended.values) {
        if (value.act->outcome == CycleOutcome::aborted && phase == AbortPhase::drying) {
            phase = value.act->abortPhase;
        }
    }
    return phase;
}

} // namespace

void foldCourse(Folding& folding, CycleFold& into, bool own)
{
    const auto reserved = saidOf<CycleReserved>(folding, into.id, own, false);
    const auto started = saidOf<CycleStarted>(folding, into.id, own, false);
    const auto ended = saidOf<CycleEnded>(folding, into.id, own, true);

    if (!reserved.empty()) {
        const CycleReserved& first = *reserved.first().act;
        into.sterilizer = reserved.first().entry->subject("sz");
        into.purpose = first.purpose;
        into.cycle.method = first.method;
        into.cycle.cycleType = first.cycleType;
        const bool agree = std::ranges::all_of(reserved.values, [&](const auto& value) {
            const Entry& entry = *reserved.first().entry;
            return value.act->lot == first.lot && value.act->purpose == first.purpose
                   && value.act->method == first.method && value.act->cycleType == first.cycleType
                   && value.entry->subject("sz") == entry.subject("sz")
                   && value.entry->subject("sp") == entry.subject("sp");
        });
        if (agree) {
            into.load.lot = first.lot;
        } else {
            saidTwice(folding, reserved);
        }
    }
    into.isImported = importedLoad(folding.book(), into.id).isImported;
    if (into.isImported && !reserved.empty()) {
        // History is never released: without a lot control number nothing is.
        into.load.lot.clear();
        folding.misfit(*reserved.first().entry, MisfitWhy::saidTwice);
    }
    into.cycle.kind = kindOf(into.purpose);

    bool contradicts = false;
    std::set<std::int64_t> counters;
    if (!started.empty()) {
        const CycleStarted& first = *started.first().act;
        into.boundAt = started.first().fact->origin->seq;
        into.load.operatedBy = actOf(*started.first().fact->origin).by;
        into.load.clock = first.clock;
        into.load.start = first.shown.at;
        into.load.counter = first.counter;
        contradicts = !started.agree([](const CycleStarted& a, const CycleStarted& b) {
            return a.clock == b.clock && a.shown.at == b.shown.at;
        });
        for (const auto& value : started.values) {
            if (value.act->counter) {
                counters.insert(*value.act->counter);
            }
        }
        bindSpecification(folding, into, reserved, started);
    }

    const CycleEnded* end = nullptr;
    bool aborted = false;
    for (const auto& value : ended.values) {
        aborted = aborted || value.act->outcome == CycleOutcome::aborted;
        if (!isSigned(actOf(*value.entry))) {
            folding.misfit(*value.entry, MisfitWhy::unsignedFact);
            continue;
        }
        end = end == nullptr ? value.act : end;
        contradicts = contradicts || end->shown.at != value.act->shown.at
                      || end->outcome != value.act->outcome
                      || end->abortPhase != value.act->abortPhase;
        if (value.act->counter) {
            counters.insert(*value.act->counter);
            into.load.counter = into.load.counter ? into.load.counter : value.act->counter;
        }
    }
    contradicts = contradicts || counters.size() > 1;
    if (contradicts) {
        // Which of them is right is not settled: the cycle has not ended.
        saidTwice(folding, started);
        saidTwice(folding, ended);
    } else if (end != nullptr) {
        into.load.end = end->shown.at;
        into.load.outcome = end->outcome;
    }
    if (aborted) {
        into.load.outcome = CycleOutcome::aborted;
        into.load.abortPhase = worstPhase(ended);
    }

    for (const std::uint32_t index : folding.book().about(into.id)) {
        const Entry& entry = *folding.book().facts()[index].origin;
        if (std::holds_alternative<DispositionSigned>(entry.act)) {
            into.decidedAt = entry.seq;
        }
    }
}

CycleFold foldCycle(Folding& folding, std::string_view id, bool own)
{
    CycleFold into;
    into.id = id;
    foldCourse(folding, into, own);
    foldSterilizersRecord(folding, into, own);
    foldItems(folding, into, own);
    foldIndicators(folding, into, own);
    if (into.isTest()) {
        foldTest(folding, into, own);
    }
    HistoryCycle& cycle = into.cycle;
    cycle.lot = into.load.lot.empty() ? into.id : into.load.lot;
    cycle.clock = into.load.clock;
    // Another cycle without a start stands in the history for a positive, which was there before.
    cycle.start = into.load.start.value_or(own ? Instant{} : firstMoment);
    cycle.end = into.load.end;
    cycle.counter = into.load.counter;
    cycle.outcome = into.load.outcome;
    for (const Item& item : into.load.items) {
        cycle.items.push_back(item.label);
    }
    for (const ProcessChallengeDevice& pcd : into.load.pcds) {
        cycle.vials.insert(cycle.vials.end(), pcd.vials.begin(), pcd.vials.end());
    }
    foldFailures(folding, into, own);
    return into;
}

} // namespace loadwarden
