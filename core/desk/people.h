#pragma once

#include "core/acts/entry.h"
#include "core/desk/person.h"
#include "core/store/read_snapshot.h"

#include <optional>
#include <span>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The staff as the journal has them, in the order in which they were first recorded.
[[nodiscard]] std::vector<Person> peopleOf(ReadSnapshot& snapshot);

/// The same from the entries of the staff's register, in order; whether they have a PIN is left
/// open.
[[nodiscard]] std::vector<Person> peopleFrom(std::span<const Entry> entries);

/// The person with exactly that id.
[[nodiscard]] std::optional<Person> personById(const std::vector<Person>& people,
                                               std::string_view id);

/// Somebody by id, badge or, where only one has it, name; blanks and the case of A to Z do not
/// matter.
[[nodiscard]] std::optional<Person> findPerson(const std::vector<Person>& people,
                                               std::string_view who);

} // namespace loadwarden
