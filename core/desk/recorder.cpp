#include "core/desk/recorder.h"

#include "core/desk/act_checks.h"
#include "core/desk/people.h"
#include "core/quantities/role_words.h"

#include <optional>
#include <utility>

namespace loadwarden {
namespace {

/// What only another door lets in. An amendment of a reservation, or of what
/// was imported, comes in here.
bool goesElsewhere(const ToRecord& asked)
{
    const AnyAct& act = asked.act;
    const bool reserves = std::holds_alternative<CycleReserved>(act) && asked.supersedes == 0;
    const bool imports = std::holds_alternative<HistoryImported>(act) && asked.supersedes == 0;
    return reserves || imports || std::holds_alternative<DispositionSigned>(act)
           || std::holds_alternative<EmergencyReleased>(act)
           || std::holds_alternative<ReviewRecorded>(act)
           || std::holds_alternative<StaffPinSet>(act)
           || std::holds_alternative<SealKeyRecorded>(act);
}

} // namespace

std::vector<Task> tasksOf(const ToRecord& act)
{
    std::vector<Task> tasks{taskOf(act.act)};
    const bool amends = act.supersedes != 0 && !std::holds_alternative<EntryVoided>(act.act)
                        && !std::holds_alternative<EntryAnnotated>(act.act)
                        && !std::holds_alternative<ChemicalReread>(act.act)
                        && !std::holds_alternative<BiologicalReread>(act.act);
    if (amends) {
        tasks.push_back(Task::amend);
    }
    return tasks;
}

OrRefusal<Author> authorFor(ReadSnapshot& snapshot, const SignedIn& who, Task task,
                            const Signature* signature, Instant now)
{
    const auto person = personById(peopleOf(snapshot), who.id());
    if (!person) {
        return Refusal{.why = RefusalWhy::personUnknown, .subject = who.id()};
    }
    if (!person->active) {
        return Refusal{.why = RefusalWhy::personInactive, .subject = person->name};
    }
    const Right& right = rightOf(task);
    if (!mayDo(person->role, task)) {
        return Refusal{.why = RefusalWhy::roleTooLow,
                       .subject = std::string(wordOf(roleWords, right.least)),
                       .task = task};
    }
    const bool signs =
        signature != nullptr && signature->id() == who.id() && signature->isGood(now);
    if (right.signs && !signs) {
        return Refusal{.why = RefusalWhy::pinNeeded, .task = task};
    }
    return Author{person->id, person->role};
}

OrRefusal<Appended> Recorder::record(const SignedIn& who, std::span<const ToRecord> acts,
                                     std::optional<Signature> signature)
{
    const Signature* const given = signature ? &*signature : nullptr;
    return m_office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        Plan plan{.author = {}, .acts = {acts.begin(), acts.end()}, .inside = {}};
        for (const ToRecord& act : acts) {
            if (goesElsewhere(act)) {
                return Refusal{.why = RefusalWhy::otherDoor,
                               .subject = std::string(kindOf(act.act).kind)};
            }
            if (act.supersedes != 0 && act.reason.empty()) {
                return Refusal{.why = RefusalWhy::reasonNeeded};
            }
            for (const Task task : tasksOf(act)) {
                auto asked = authorFor(snapshot, who, task, given, m_office.now());
                if (auto* const refusal = std::get_if<Refusal>(&asked)) {
                    return std::move(*refusal);
                }
                plan.author = std::get<Author>(std::move(asked));
            }
        }
        if (auto refusal = m_office.whyNoEntries(acts, plan.author)) {
            return *std::move(refusal);
        }
        if (auto refusal = checkActs(snapshot, acts, plan.author, m_office.now())) {
            return *std::move(refusal);
        }
        return plan;
    });
}

} // namespace loadwarden
