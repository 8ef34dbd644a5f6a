#include "core/desk/recorder.h"

#include "core/desk/act_checks.h"
#include "core/desk/people.h"
#include "core/journal/hash.h"
#include "core/quantities/role_words.h"
#include "core/store/attachments.h"

#include <optional>
#include <utility>

namespace loadwarden {
namespace {

/// What comes with the bytes of its file.
bool bringsAFile(const ToRecord& asked)
{
    return std::holds_alternative<TraceRead>(asked.act) && asked.supersedes == 0;
}

/// What only another door lets in. An amendment of a reservation, or of what
/// was imported, comes in here.
bool goesElsewhere(const ToRecord& asked)
{
    const AnyAct& act = asked.act;
    const bool reserves = std::holds_alternative<CycleReserved>(act) && asked.supersedes == 0;
    const bool imports = std::holds_alternative<HistoryImported>(act) && asked.supersedes == 0;
    return reserves || imports || bringsAFile(asked)
           || std::holds_alternative<DispositionSigned>(act)
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

/// Whether files come with the acts.
enum class Files : std::uint8_t { none, given };

/// An act names no file that the journal does not have.
std::optional<Refusal> whyNoFile(ReadSnapshot& snapshot, const ToRecord& act)
{
    const auto* const read = std::get_if<TraceRead>(&act.act);
    if (read == nullptr || hasAttachment(snapshot, read->content)) {
        return std::nullopt;
    }
    return Refusal{.why = RefusalWhy::unknown, .subject = read->content};
}

/// Who does all of them; a refusal where one of them cannot be recorded.
OrRefusal<Author> authorOfAll(Office& office, ReadSnapshot& snapshot, const SignedIn& who,
                              std::span<const ToRecord> acts, const Signature* signature,
                              Signing signing, Files files = Files::none)
{
    Author author;
    for (const ToRecord& act : acts) {
        if (goesElsewhere(act) && !(files == Files::given && bringsAFile(act))) {
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
    if (files == Files::none) {
        for (const ToRecord& act : acts) {
            if (auto refusal = whyNoFile(snapshot, act)) {
                return *std::move(refusal);
            }
        }
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

OrRefusal<Appended> Recorder::attach(const SignedIn& who, ToRecord act, std::string_view bytes)
{
    const Hash content = hashOf(bytes);
    if (auto* const read = std::get_if<TraceRead>(&act.act)) {
        read->content = hexOf(content);
        read->bytes = static_cast<std::int64_t>(bytes.size());
    }
    return m_office.record([&](ReadSnapshot& snapshot) -> OrRefusal<Plan> {
        auto author = authorOfAll(m_office, snapshot, who, {&act, 1}, nullptr, Signing::now,
                                  bringsAFile(act) ? Files::given : Files::none);
        if (auto* const refusal = std::get_if<Refusal>(&author)) {
            return std::move(*refusal);
        }
        return Plan{.author = std::get<Author>(std::move(author)),
                    .acts = {act},
                    .inside = [&](WriteTransaction& transaction, std::vector<ToRecord>&) {
                        keepAttachment(transaction, content, bytes);
                    }};
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
