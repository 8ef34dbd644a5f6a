#include "core/desk/verify_and_release.h"

#include "core/desk/people.h"
#include "core/desk/recorder.h"
#include "core/quantities/role_words.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"

namespace loadwarden {

std::optional<Decision> decisionOnceVerified(const CycleView& view, const std::string& person,
                                             Role role)
{
    if (view.isTest() || view.isImported()
        || view.folded.record.load.outcome == CycleOutcome::unknown) {
        return std::nullopt;
    }
    EvidenceRecord record = view.folded.record;
    record.load.verifications.push_back(
        {.by = person, .role = role, .happenedAt = view.now, .recordedAt = view.now});
    return decide(assemble(record), view.policy, view.now);
}

OrRefusal<Appended> verifyOnSight(Office& office, const SignedIn& who, Signature signature,
                                  const Sight& sight)
{
    {
        ReadSnapshot snapshot(office.connection());
        if (auto since = cameSince(snapshot, sight); !since.empty()) {
            return Refusal{
                .why = RefusalWhy::stale, .subject = sight.cycle, .since = std::move(since)};
        }
    }
    return Recorder(office).record(
        who, {.act = PhysicalVerified{}, .subjects = {sight.cycle}, .basedOn = sight.seen},
        std::move(signature));
}

OrRefusal<Appended> verifyAndRelease(Office& office, const SignedIn& who, Signature verification,
                                     Signature release, const Sight& sight)
{
    // Refused where anything came in that the signer has not seen: what is verified is what was
    // shown.
    Person person;
    {
        ReadSnapshot snapshot(office.connection());
        const auto view = viewCycle(snapshot, office.entries(), sight.cycle, office.now());
        if (!view) {
            return Refusal{.why = RefusalWhy::unknown, .subject = sight.cycle};
        }
        if (auto since = cameSince(snapshot, sight); !since.empty()) {
            return Refusal{
                .why = RefusalWhy::stale, .subject = sight.cycle, .since = std::move(since)};
        }
        if (sightDigest(*view, sight.seen) != sight.decided) {
            return Refusal{.why = RefusalWhy::changed,
                           .subject = view->lot(),
                           .verdict = view->decision.verdict};
        }
        person = personById(peopleOf(snapshot), who.id()).value_or(Person{});
        const auto foreseen = decisionOnceVerified(*view, who.id(), person.role);
        if (mayHoldImplant(*view) && !mayDo(person.role, Task::releaseImplants)) {
            return Refusal{.why = RefusalWhy::roleTooLow,
                           .subject =
                               std::string(wordOf(roleWords, rightOf(Task::releaseImplants).least)),
                           .task = Task::releaseImplants};
        }
        if (!foreseen || foreseen->verdict != Verdict::release) {
            return Refusal{.why = RefusalWhy::notReleasable,
                           .subject = view->lot(),
                           .verdict = foreseen ? foreseen->verdict : view->decision.verdict};
        }
    }
    auto verified = Recorder(office).record(
        who, {.act = PhysicalVerified{}, .subjects = {sight.cycle}, .basedOn = sight.seen},
        std::move(verification));
    if (auto* const refusal = std::get_if<Refusal>(&verified)) {
        return std::move(*refusal);
    }
    // Seen with it is what stood before and the verification itself: what has come in meanwhile is
    // refused as always.
    Sight after;
    {
        ReadSnapshot snapshot(office.connection());
        const auto view = viewCycle(snapshot, office.entries(), sight.cycle, office.now(),
                                    std::get<Appended>(verified).head.seq);
        if (!view) {
            return Refusal{.why = RefusalWhy::unknown, .subject = sight.cycle};
        }
        auto since = cameSince(snapshot, sight);
        const bool isAsForeseen = since.size() == 1 && view->decision.verdict == Verdict::release;
        if (!isAsForeseen) {
            return Refusal{
                .why = RefusalWhy::stale, .subject = sight.cycle, .since = std::move(since)};
        }
        after = sightFrom(*view);
    }
    return Dispositions(office).sign(who, std::move(release), after, Verdict::release);
}

} // namespace loadwarden
