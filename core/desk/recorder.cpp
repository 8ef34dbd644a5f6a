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

namespace {

/// Whether the signature is asked for now, or only once everything else is right.
enum class Signing : std::uint8_t { now, later };

/// Who does all of them; a refusal where one of them cannot be recorded.
OrRefusal<Author> authorOfAll(Office& office, ReadSnapshot& snapshot, const SignedIn& who,
                              std::span<const ToRecord> acts, const Signature* signature,
                              Signing signing)
{
    Author author;
    for (const ToRecord& act : acts) {
        if (goesElsewhere(act)) {
            return Refusal{.why = RefusalWhy::otherDoor,
                           .subject = std::string(kindOf(act.act).kind)};
        }
        if (act.supersedes != 0 && act.reason.empty()) {
            return Refusal{.why = RefusalWhy::reasonNeeded};
        }
        for (const Task task : tasksOf(act)) {
            auto asked = authorFor(snapshot, who, task, signature, office.now());
            if (auto* const refusal = std::get_if<Refusal>(&asked)) {
                // It is what authorFor() asks for last.
                if (signing == Signing::now || refusal->why != RefusalWhy::pinNeeded) {
                    return std::move(*refusal);
                }
                const auto person = personById(peopleOf(snapshot), who.id());
                author = {person->id, person->role};
                continue;
            }
            author = std::get<Author>(std::move(asked));
        }
    }
    if (auto refusal = office.whyNoEntries(acts, author)) {
        return *std::move(refusal);
    }
    if (auto refusal = checkActs(snapshot, acts, author, office.now())) {
        return *std::move(refusal);
    }
    return author;
}

} // namespace

OrRefusal<Appended> Recorder::record(const SignedIn& who, std::span<const ToRecord> acts,
                                     std::optional<Signature> signature)
{
    const Signature* const given = signature ? &*signature : nullptr;
    return m_office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto author = authorOfAll(m_office, snapshot, who, acts, given, Signing::now);
        if (auto* const refusal = std::get_if<Refusal>(&author)) {
            return std::move(*refusal);
        }
        return Plan{.author = std::get<Author>(std::move(author)),
                    .acts = {acts.begin(), acts.end()},
                    .inside = {}};
    });
}

std::optional<Refusal> Recorder::whyNot(const SignedIn& who, std::span<const ToRecord> acts)
{
    ReadSnapshot snapshot(m_office.connection());
    auto author = authorOfAll(m_office, snapshot, who, acts, nullptr, Signing::later);
    if (auto* const refusal = std::get_if<Refusal>(&author)) {
        return std::move(*refusal);
    }
    return std::nullopt;
}

} // namespace loadwarden
