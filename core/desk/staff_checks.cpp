#include "core/desk/staff_checks.h"

#include "core/desk/act_ids.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/quantities/person.h"
#include "core/store/journal_reader.h"

#include <algorithm>

namespace loadwarden {
namespace {

/// Whether an act says or takes away who somebody is.
bool isOfStaff(const ToRecord& act)
{
    return std::ranges::any_of(act.subjects,
                               [](const std::string& id) { return prefixOf(id) == "st"; });
}

} // namespace

std::optional<Refusal> checkStaff(ReadSnapshot& snapshot, std::span<const ToRecord> acts,
                                  const Author& author)
{
    if (std::ranges::none_of(acts, isOfStaff)) {
        return std::nullopt;
    }
    std::vector<Entry> entries = registerEntries(snapshot, "st");
    std::int64_t seq = JournalReader(snapshot).head().seq;
    for (const ToRecord& act : acts) {
        ++seq;
        if (isOfStaff(act)) {
            entries.push_back(asEntry(act, author, seq, {}));
        }
    }
    const std::vector<Person> before = peopleOf(snapshot);
    const std::vector<Person> after = peopleFrom(entries);
    const auto hasPin = [&](const Person& person) {
        const auto known = personById(before, person.id);
        return known && known->hasPin;
    };
    for (const Person& person : after) {
        for (const Person& other : after) {
            const bool reads =
                !person.badge.empty() && person.id != other.id
                && (isSamePerson(person.badge, other.badge) || isSamePerson(person.badge, other.id)
                    || isSamePerson(person.badge, other.name));
            if (reads) {
                return Refusal{.why = RefusalWhy::badgeTaken, .subject = person.badge};
            }
        }
    }
    const bool someone = std::ranges::any_of(after, [&](const Person& person) {
        return person.role == Role::supervisor && person.active && hasPin(person);
    });
    return someone ? std::nullopt : std::optional(Refusal{.why = RefusalWhy::lastSupervisor});
}

} // namespace loadwarden
