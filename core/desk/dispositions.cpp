#include "core/desk/dispositions.h"

#include "core/desk/act_values.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/desk/recorder.h"
#include "core/quantities/role_words.h"
#include "core/release/rules_version.h"
#include "core/store/act_entry.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Whether a finding says no more than that a vial has not answered yet.
bool waitsForTheVial(const Finding& finding)
{
    switch (finding.key) {
    case Key::implantPending:
    case Key::itemImplantWaits:
    case Key::biNotStarted:
    case Key::biIncubating:
    case Key::biNotCounted:
    case Key::biDue:
    case Key::biControl:
    case Key::routinePending: return finding.outcome == Outcome::waits;
    default: return false;
    }
}

/// What forbids an item's release and is not the vial's missing answer (ACTS.md, 4).
std::vector<Finding> besidesTheVial(const CycleView& view, std::size_t item)
{
    std::vector<Finding> others;
    for (const Finding& finding : view.decision.findings) {
        const bool isOfIt = finding.item < 0 || static_cast<std::size_t>(finding.item) == item;
        if (isOfIt && finding.outcome != Outcome::note && !waitsForTheVial(finding)) {
            others.push_back(finding);
        }
    }
    return others;
}

std::string itemId(const CycleView& view, std::int32_t item)
{
    const auto index = static_cast<std::size_t>(item);
    return item < 0 || index >= view.folded.itemIds.size() ? "" : view.folded.itemIds[index];
}

SignedGrounds groundsOf(const CycleView& view)
{
    SignedGrounds grounds{.findings = {},
                          .evidence = view.folded.digest,
                          .policy = view.folded.policy.value_or(view.policy.digest),
                          .rules = std::string(rulesVersion)};
    for (const Finding& finding : view.decision.findings) {
        grounds.findings.push_back({.key = std::string(textOf(finding.key)),
                                    .subject = finding.subject,
                                    .item = itemId(view, finding.item),
                                    .outcome = finding.outcome});
    }
    return grounds;
}

Role roleFor(Reviewer reviewer)
{
    return reviewer == Reviewer::supervisor || reviewer == Reviewer::secondSupervisor
               ? Role::supervisor
               : Role::lead;
}

} // namespace

std::vector<CameSince> cameSince(ReadSnapshot& snapshot, const Sight& sight)
{
    std::vector<CameSince> since;
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.about(sight.cycle, sight.seen + 1);
    while (const auto stored = cursor.next()) {
        const Entry entry = understand(stored->bytes, stored->hash);
        CameSince came{.seq = entry.seq,
                       .kind = std::string(kindOf(entry.act).kind),
                       .thing = {},
                       .value = valueRead(entry.act),
                       .by = entry.actor,
                       .at = entry.recordedAt.at};
        const auto other = std::ranges::find_if(
            entry.subjects, [&](const std::string& id) { return id != sight.cycle; });
        if (other != entry.subjects.end()) {
            came.thing = *other;
        }
        if (const auto person = personById(peopleOf(snapshot), entry.actor)) {
            came.by = person->name;
        }
        since.push_back(std::move(came));
    }
    return since;
}

Sight sightFrom(const CycleView& view)
{
    return {.cycle = view.id, .seen = view.seen, .decided = sightDigest(view, view.seen)};
}

OrRefusal<Appended> Dispositions::rest(const SignedIn& who, const Signature& signature,
                                       const Sight& sight, Task task, const Judge& judge)
{
    return m_office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto asked = authorFor(snapshot, who, task, &signature, m_office.now());
        if (auto* const refusal = std::get_if<Refusal>(&asked)) {
            return std::move(*refusal);
        }
        auto& author = std::get<Author>(asked);
        if (JournalReader(snapshot).head().seq < sight.seen) {
            return Refusal{.why = RefusalWhy::changed, .subject = sight.cycle};
        }
        if (auto since = cameSince(snapshot, sight); !since.empty()) {
            return Refusal{
                .why = RefusalWhy::stale, .subject = sight.cycle, .since = std::move(since)};
        }
        const auto view = viewCycle(snapshot, m_office.entries(), sight.cycle, m_office.now());
        if (!view) {
            return Refusal{.why = RefusalWhy::unknown, .subject = sight.cycle};
        }
        if (view->isImported()) {
            return Refusal{.why = RefusalWhy::imported, .subject = view->lot()};
        }
        if (!view->folded.isUnderstood) {
            return Refusal{.why = RefusalWhy::notUnderstood, .subject = view->lot()};
        }
        if (view->isTest()) {
            return Refusal{.why = RefusalWhy::notALoad, .subject = view->lot()};
        }
        if (sightDigest(*view, sight.seen) != sight.decided) {
            return Refusal{.why = RefusalWhy::changed,
                           .subject = view->lot(),
                           .verdict = view->decision.verdict};
        }
        auto act = judge(*view, author);
        if (auto* const refusal = std::get_if<Refusal>(&act)) {
            return std::move(*refusal);
        }
        auto& recorded = std::get<ToRecord>(act);
        recorded.basedOn = sight.seen;
        return Plan{.author = std::move(author), .acts = {std::move(recorded)}, .inside = {}};
    });
}

OrRefusal<Appended> Dispositions::sign(const SignedIn& who, Signature signature, const Sight& sight,
                                       Verdict meaning)
{
    const auto judge = [&](const CycleView& view, const Author& author) -> OrRefusal<ToRecord> {
        const Verdict verdict = view.decision.verdict;
        if (meaning < verdict) {
            return Refusal{
                .why = RefusalWhy::notReleasable, .subject = view.lot(), .verdict = verdict};
        }
        if (meaning == Verdict::release && mayHoldImplant(view)
            && !mayDo(author.role, Task::releaseImplants)) {
            return Refusal{.why = RefusalWhy::roleTooLow,
                           .subject =
                               std::string(wordOf(roleWords, rightOf(Task::releaseImplants).least)),
                           .task = Task::releaseImplants};
        }
        DispositionSigned act{
            .meaning = meaning, .verdict = verdict, .items = {}, .grounds = groundsOf(view)};
        for (std::size_t i = 0; i < view.decision.items.size(); ++i) {
            act.items.push_back({.item = itemId(view, static_cast<std::int32_t>(i)),
                                 .meaning = std::max(meaning, view.decision.items[i].verdict)});
        }
        return ToRecord{.act = std::move(act), .subjects = {view.id}};
    };
    return rest(who, signature, sight, Task::DispositionSigned, judge);
}

OrRefusal<Appended> Dispositions::releaseInEmergency(const SignedIn& who, Signature signature,
                                                     const Sight& sight, const std::string& item,
                                                     const Emergency& emergency)
{
    const auto judge = [&](const CycleView& view, const Author&) -> OrRefusal<ToRecord> {
        const auto found = std::ranges::find(view.folded.itemIds, item);
        if (found == view.folded.itemIds.end()) {
            return Refusal{.why = RefusalWhy::notPlaced, .subject = item, .detail = view.lot()};
        }
        const auto index = static_cast<std::size_t>(found - view.folded.itemIds.begin());
        if (view.folded.record.load.items[index].implant == Implant::no) {
            return Refusal{.why = RefusalWhy::notAnImplant, .subject = item};
        }
        if (view.folded.record.load.outcome != CycleOutcome::ended) {
            return Refusal{.why = RefusalWhy::notEnded, .subject = view.lot()};
        }
        // What failed is not overruled: only what still waits is (RULES.md, 8).
        const Verdict verdict = view.decision.items[index].verdict;
        if (verdict == Verdict::reprocess) {
            return Refusal{
                .why = RefusalWhy::notReleasable, .subject = view.lot(), .verdict = verdict};
        }
        if (verdict == Verdict::release) {
            return Refusal{.why = RefusalWhy::nothingToSign, .subject = view.lot()};
        }
        if (auto others = besidesTheVial(view, index); !others.empty()) {
            return Refusal{.why = RefusalWhy::notOnlyTheVial,
                           .subject = view.lot(),
                           .findings = std::move(others)};
        }
        return ToRecord{.act = EmergencyReleased{.caseReference = emergency.caseReference,
                                                 .demandedBy = emergency.demandedBy,
                                                 .why = emergency.why,
                                                 .wouldHavePrevented = emergency.wouldHavePrevented,
                                                 .grounds = groundsOf(view)},
                        .subjects = {item, view.id}};
    };
    return rest(who, signature, sight, Task::EmergencyReleased, judge);
}

OrRefusal<Appended> Dispositions::review(const SignedIn& who, Signature signature,
                                         const Sight& sight, const ReviewAsked& asked)
{
    const auto judge = [&](const CycleView& view, const Author& author) -> OrRefusal<ToRecord> {
        const auto isAsked = [&](const Finding& finding) {
            return textOf(finding.key) == asked.finding && finding.subject == asked.subject;
        };
        const auto found = std::ranges::find_if(view.decision.findings, isAsked);
        if (found == view.decision.findings.end()) {
            return Refusal{.why = RefusalWhy::noSuchFinding, .subject = asked.finding};
        }
        if (found->reviewer == Reviewer::none) {
            return Refusal{.why = RefusalWhy::notReviewable, .subject = asked.finding};
        }
        if (author.role < roleFor(found->reviewer)) {
            return Refusal{.why = RefusalWhy::reviewerTooLow,
                           .subject = std::string(wordOf(roleWords, roleFor(found->reviewer)))};
        }
        return ToRecord{.act = ReviewRecorded{.finding = asked.finding,
                                              .subject = asked.subject,
                                              .answer = asked.answer,
                                              .why = asked.why,
                                              .seen = sight.seen},
                        .subjects = {view.id}};
    };
    return rest(who, signature, sight, Task::ReviewRecorded, judge);
}

} // namespace loadwarden
