#include "core/acts/fold/evidence_fold.h"

#include "core/acts/fold/cycle_fold.h"
#include "core/acts/fold/digest.h"
#include "core/acts/fold/facility.h"
#include "core/acts/fold/load_history.h"
#include "core/acts/fold/names.h"
#include "core/acts/fold/products.h"
#include "core/acts/fold/sterilizer_fold.h"

#include <algorithm>
#include <limits>

namespace loadwarden {
namespace {

/// The newest policy that was recorded before the load's start; before it has started, the newest.
const Fact* boundPolicy(Folding& folding, const CycleFold& cycle)
{
    const std::vector<Fact>& facts = folding.book().facts();
    for (auto fact = facts.rbegin(); fact != facts.rend(); ++fact) {
        if (std::holds_alternative<PolicyRecorded>(fact->origin->act)
            && (!cycle.hasStarted() || fact->origin->seq < cycle.boundAt)) {
            folding.take(*fact, false);
            if (fact->stands()) {
                return &*fact;
            }
        }
    }
    return nullptr;
}

/// What the authors of reviews had seen, now that everything is folded: everything of the evidence
/// that was recorded up to that moment (ACTS.md, 4).
void fillNewestSeen(const Folding& folding, std::string_view cycle, std::vector<Review>& reviews)
{
    std::vector<const Entry*> evidence;
    for (const Fact& fact : folding.book().facts()) {
        if (folding.isTaken(fact)) {
            evidence.insert(evidence.end(), fact.chain.begin(), fact.chain.end());
        }
    }
    std::size_t at = 0;
    for (const std::uint32_t index : folding.book().about(cycle)) {
        const Fact& fact = folding.book().facts()[index];
        if (!std::holds_alternative<ReviewRecorded>(fact.origin->act) || !fact.stands()) {
            continue;
        }
        for (const Entry* const entry : fact.counting) {
            const std::int64_t seen = std::get<ReviewRecorded>(entry->act).seen;
            Instant newestSeen = firstMoment;
            Instant firstUnseen = Instant{std::numeric_limits<std::int64_t>::max()};
            for (const Entry* const each : evidence) {
                if (each->seq <= seen && each->seq < entry->seq) {
                    newestSeen = std::max(newestSeen, each->recordedAt.at);
                } else if (each->seq < entry->seq) {
                    firstUnseen = std::min(firstUnseen, each->recordedAt.at);
                }
            }
            reviews[at++].newestSeen =
                std::min(newestSeen, firstUnseen - Duration::milliseconds(1));
        }
    }
}

Phase phaseOf(const Folding& folding, const CycleFold& cycle)
{
    if (cycle.isImported) {
        return Phase::imported;
    }
    if (cycle.decidedAt != 0) {
        for (const Fact& fact : folding.book().facts()) {
            if (!folding.isTaken(fact)) {
                continue;
            }
            // Of others only what stood in the evidence then: that they went on is no change.
            if (!folding.isOwn(fact) && fact.origin->seq > cycle.decidedAt) {
                continue;
            }
            for (const Entry* const entry : fact.chain) {
                if (entry->seq > cycle.decidedAt && (folding.isOwn(fact) || entry != fact.origin)) {
                    return Phase::evidenceChanged;
                }
            }
        }
        return Phase::disposed;
    }
    if (!cycle.hasStarted()) {
        return cycle.hasEnded() ? Phase::awaitingDecision : Phase::beingLoaded;
    }
    return cycle.hasEnded() ? Phase::awaitingDecision : Phase::running;
}

std::vector<std::int64_t> takenEntries(const Folding& folding)
{
    std::vector<std::int64_t> entries;
    for (const Fact& fact : folding.book().facts()) {
        if (folding.isTaken(fact)) {
            for (const Entry* const entry : fact.chain) {
                entries.push_back(entry->seq);
            }
        }
    }
    if (!std::ranges::is_sorted(entries)) { // of a fact that was corrected
        std::ranges::sort(entries);
    }
    return entries;
}

} // namespace

std::span<const Entry> entriesUpTo(std::span<const Entry> entries, std::int64_t seq)
{
    const auto end = std::ranges::upper_bound(entries, seq, {}, &Entry::seq);
    return entries.first(static_cast<std::size_t>(end - entries.begin()));
}

FoldedEvidence foldEvidence(std::span<const Entry> entries, std::string_view cycle)
{
    return foldEvidence(pointersTo(entries), cycle);
}

FoldedEvidence foldEvidence(std::span<const Entry* const> entries, std::string_view cycle)
{
    const FactBook book(entries);
    Folding folding(book);
    FoldedEvidence folded;
    EvidenceRecord& record = folded.record;

    CycleFold own = foldCycle(folding, cycle, true);
    SterilizerFold sterilizer;
    if (!own.sterilizer.empty()) {
        sterilizer = foldSterilizer(folding, own.sterilizer, own.id);
        record.sterilizer = std::move(sterilizer.record);
    }
    const Facility facility = foldFacility(folding);
    record.zone = facility.zone;
    record.atmosphere = facility.atmosphere;
    if (own.specification != nullptr) {
        record.specification =
            std::get<SpecificationRecorded>(own.specification->current().act).specification;
    }
    if (own.isTest()) {
        record.test = own.cycle;
    } else {
        record.load = own.load;
    }
    const Fact* const policy = boundPolicy(folding, own);
    foldProducts(folding, record);
    nameCycles(book, own, sterilizer.cycleIds, record);
    if (!own.isTest()) {
        fillNewestSeen(folding, own.id, record.load.reviews);
    }

    folded.itemIds = std::move(own.itemIds);
    folded.pcdMarks = std::move(own.pcdMarks);
    folded.sterilizer = own.sterilizer;
    folded.phase = phaseOf(folding, own);
    folded.entries = takenEntries(folding);
    if (policy != nullptr) {
        folded.policy = std::get<PolicyRecorded>(policy->current().act).digest;
    }
    folded.digest = evidenceDigest(entries, folded.entries, folded.policy, own.specification);
    folded.misfits = misfitsAbout(folding, own.id);
    folded.history = historyOf(folding, own.id);
    folded.isUnderstood = std::ranges::none_of(
        folded.misfits, [](const Misfit& each) { return each.why == MisfitWhy::notUnderstood; });
    return folded;
}

} // namespace loadwarden
