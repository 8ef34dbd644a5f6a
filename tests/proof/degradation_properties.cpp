// Degrading: taking away or spoiling a pass, or spoiling a failure, never improves a verdict
// (core/release/RULES.md, 1).

#include "tests/proof/situations.h"

#include <algorithm>

namespace loadwarden {
namespace {

using proof::anySituation;
using proof::Situation;

/// Whether neither the load nor any of its items has a better verdict than before.
bool isNoBetter(const Decision& after, const Decision& before)
{
    return after.verdict >= before.verdict
           && std::equal(
               after.items.begin(), after.items.end(), before.items.begin(), before.items.end(),
               [](const ItemDecision& a, const ItemDecision& b) { return a.verdict >= b.verdict; });
}

RC_GTEST_PROP(Degradation, NeverImprovesAVerdict, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    EvidenceRecord worse = record;
    RC_PRE(proof::degrade(worse, situation.now));
    const Decision after =
        support::decideRecordAt(std::move(worse), situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_CLASSIFY(before.verdict == Verdict::release, "from release");
    RC_CLASSIFY(before.verdict == Verdict::quarantine, "from quarantine");
    RC_CLASSIFY(before.verdict == Verdict::reprocess, "from reprocess");
    RC_ASSERT(isNoBetter(after, before));
}

// An indicator that the register does not know is not judged and waits, also one that would fail:
// no entry that is missing lets anything go.
RC_GTEST_PROP(Degradation, ThatAnEntryOfTheRegisterIsMissingLetsNothingGo, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    EvidenceRecord worse = record;
    RC_PRE(proof::takeFromRegister(worse));
    const Decision after =
        support::decideRecordAt(std::move(worse), situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_ASSERT(before.verdict == Verdict::release || after.verdict != Verdict::release);
    RC_ASSERT(std::equal(after.items.begin(), after.items.end(), before.items.begin(),
                         [](const ItemDecision& a, const ItemDecision& b) {
                             return b.verdict == Verdict::release || a.verdict != Verdict::release;
                         }));
    RC_CLASSIFY(after.verdict < before.verdict, "waits instead of failing");
    RC_CLASSIFY(after.verdict > before.verdict, "worse");
}

/// Whether something is said to be unread, or read so that it does not count: being lost matters
/// for these.
bool anythingUnread(const Decision& decision)
{
    static const std::vector<Key> keys{Key::printoutMissing,
                                       Key::physicalMissing,
                                       Key::pcdNotRead,
                                       Key::pcdInvalid,
                                       Key::pcdInvalidNoted,
                                       Key::itemExternalNotRead,
                                       Key::itemExternalInvalid,
                                       Key::itemInternalNotRead,
                                       Key::itemInternalInvalid,
                                       Key::itemInternalOnOpening,
                                       Key::itemNotChecked,
                                       Key::biNotStarted,
                                       Key::biIncubating,
                                       Key::biNotCounted,
                                       Key::biDue,
                                       Key::biProcessIndicator,
                                       Key::biControl};
    return std::any_of(decision.findings.begin(), decision.findings.end(),
                       [](const Finding& finding) {
                           return std::find(keys.begin(), keys.end(), finding.key) != keys.end();
                       });
}

RC_GTEST_PROP(Degradation, SayingLostNeverHelpsWhereNothingIsUnread, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    RC_PRE(!anythingUnread(before));
    EvidenceRecord worse = record;
    RC_PRE(proof::sayLost(worse, situation.now));
    const Decision after =
        support::decideRecordAt(std::move(worse), situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    RC_ASSERT(isNoBetter(after, before));
}

// Whoever read a bad answer cannot take it back alone: not by declaring it void, in whatever role
// and however they spell their name.
RC_GTEST_PROP(Voiding, OfABadReadingByItsOwnReaderFreesNothing, ())
{
    Situation situation = anySituation();
    EvidenceRecord& record = situation.record;
    const Act reader{"p7", Role::lead, situation.now, situation.now};
    const bool ofControl = !record.controls.empty() && *rc::gen::inRange(0, 3) == 0;
    std::vector<IndicatorReading>* readings = nullptr;
    if (ofControl) {
        readings = &proof::pick(record.controls)->readings;
        readings->push_back({Seen::noGrowth, reader, {}});
    } else if (Vial* vial = proof::pick(proof::vialsOf(record));
               vial && *rc::gen::inRange(0, 3) == 0) {
        readings = &vial->readings;
        readings->push_back({Seen::growth, reader, {}});
    } else if (ChemicalIndicator* indicator = proof::pick(proof::indicatorsOf(record))) {
        readings = &indicator->readings;
        readings->push_back(
            {*rc::gen::element(Seen::frontOnBoundary, Seen::unchanged, Seen::absent), reader, {}});
    }
    RC_PRE(readings != nullptr);
    const Decision before = support::decideRecordAt(record, situation.policy, situation.now);
    Act voiding = reader;
    voiding.by = *rc::gen::element<std::string>("p7", "P7", " p 7");
    voiding.role = *rc::gen::element(Role::operating, Role::lead, Role::supervisor);
    readings->back().voided = voiding;
    const Decision after = support::decideRecordAt(record, situation.policy, situation.now);
    RC_LOG() << support::describe(before) << "then" << std::endl << support::describe(after);
    // It is only said that the voiding does not count.
    RC_ASSERT(isNoBetter(after, before) && isNoBetter(before, after));

    // Another lead can, growth in a vial apart: so the check above is no idle one.
    readings->back().voided->by = "p8";
    readings->back().voided->role = Role::lead;
    const Decision byAnother = support::decideRecordAt(record, situation.policy, situation.now);
    RC_CLASSIFY(!isNoBetter(byAnother, before), "another lead changes it");
}

} // namespace
} // namespace loadwarden
