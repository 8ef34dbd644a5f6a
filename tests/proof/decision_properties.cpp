// What must hold of any decision.

#include "tests/proof/situations.h"

#include <algorithm>

namespace loadwarden {
namespace {

using proof::anySituation;
using proof::isSame;
using proof::Situation;

RC_GTEST_PROP(AnyDecision, HasItemsNoBetterThanTheirLoad, ())
{
    const Situation situation = anySituation();
    const Decision decision =
        support::decideRecordAt(situation.record, situation.policy, situation.now);
    for (const ItemDecision& item : decision.items) {
        RC_ASSERT(item.verdict >= decision.verdict);
    }
}

RC_GTEST_PROP(AnyDecision, SaysWhyAnythingIsHeld, ())
{
    const Situation situation = anySituation();
    const Decision decision =
        support::decideRecordAt(situation.record, situation.policy, situation.now);
    const auto blocks = [&](std::int32_t item) {
        return std::any_of(decision.findings.begin(), decision.findings.end(),
                           [item](const Finding& finding) {
                               return finding.outcome > Outcome::note
                                      && (finding.item == -1 || finding.item == item);
                           });
    };
    if (decision.verdict != Verdict::release) {
        RC_ASSERT(blocks(-1));
    }
    for (std::size_t i = 0; i < decision.items.size(); ++i) {
        if (decision.items[i].verdict != Verdict::release) {
            RC_ASSERT(blocks(static_cast<std::int32_t>(i)));
        }
    }
}

/// Moves the moment of the decision to somewhere in the load's life, so that some of it is yet to
/// come.
Instant someMoment(const EvidenceRecord& record, Instant now)
{
    const std::int64_t from = record.load.start->ms;
    return Instant{*rc::gen::inRange(from, now.ms + 1)};
}

RC_GTEST_PROP(NextChange, IsTheFirstMomentAtWhichTimeAloneChangesTheDecision, ())
{
    const Situation situation = anySituation();
    const Instant now = someMoment(situation.record, situation.now);
    const Decision decision = support::decideRecordAt(situation.record, situation.policy, now);
    RC_CLASSIFY(decision.nextChangeAt.has_value(), "time alone will change it");
    if (!decision.nextChangeAt) {
        // Nothing to come: a year on, the same is said.
        const Decision later = support::decideRecordAt(situation.record, situation.policy,
                                                       now + Duration::hours(24 * 365));
        RC_LOG() << formatUtc(now) << support::describe(decision) << "then a year on "
                 << support::describe(later);
        RC_ASSERT(isSame(decision, later));
        return;
    }
    const Instant change = *decision.nextChangeAt;
    RC_ASSERT(change > now);
    const Decision justBefore = support::decideRecordAt(situation.record, situation.policy,
                                                        change - Duration::milliseconds(1));
    const Decision at = support::decideRecordAt(situation.record, situation.policy, change);
    RC_LOG() << formatUtc(now) << support::describe(justBefore) << "then at " << formatUtc(change)
             << support::describe(at);
    RC_ASSERT(isSame(decision, justBefore));
    RC_ASSERT(!isSame(justBefore, at));
}

} // namespace
} // namespace loadwarden
