#include "core/desk/people.h"

#include "core/acts/fold/registers.h"
#include "core/desk/journal_entries.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

/// For whom there is a PIN.
std::set<std::string> withPin(ReadSnapshot& snapshot)
{
    std::set<std::string> staff;
    Statement rows = snapshot.statement("SELECT staff FROM s_pin");
    while (rows.step()) {
        staff.insert(rows.text(0));
    }
    return staff;
}

} // namespace

std::vector<Person> peopleOf(ReadSnapshot& snapshot)
{
    std::vector<Person> people = peopleFrom(registerEntries(snapshot, "st"));
    const std::set<std::string> pins = withPin(snapshot);
    for (Person& person : people) {
        person.hasPin = pins.contains(person.id);
    }
    return people;
}

std::vector<Person> peopleFrom(std::span<const Entry> entries)
{
    const FactBook book(entries);
    std::vector<Person> people;
    for (const Fact& fact : book.facts()) {
        if (!std::holds_alternative<StaffRecorded>(fact.origin->act)) {
            continue;
        }
        const std::string& id = fact.origin->subjects.front();
        if (std::ranges::find(people, id, &Person::id) != people.end()) {
            continue;
        }
        const Fact* const newestFact = peekRevision<StaffRecorded>(book, id, newest);
        if (newestFact == nullptr) {
            continue;
        }
        const auto& recorded = std::get<StaffRecorded>(newestFact->current().act);
        people.push_back({.id = id,
                          .name = recorded.name,
                          .role = recorded.role,
                          .badge = recorded.badge,
                          .active = recorded.active});
    }
    return people;
}

std::optional<Person> personById(const std::vector<Person>& people, std::string_view id)
{
    const auto found = std::ranges::find(people, id, &Person::id);
    return found == people.end() ? std::nullopt : std::optional(*found);
}

std::optional<Person> findPerson(const std::vector<Person>& people, std::string_view who)
{
    for (const Person& person : people) {
        if (person.id == who || (!person.badge.empty() && isSamePerson(person.badge, who))) {
            return person;
        }
    }
    const auto isNamedSo = [who](const Person& person) { return isSamePerson(person.name, who); };
    const auto found = std::ranges::find_if(people, isNamedSo);
    if (found == people.end() || std::ranges::count_if(people, isNamedSo) != 1) {
        return std::nullopt;
    }
    return *found;
}

} // namespace loadwarden
