#pragma once

#include "core/acts/entry.h"
#include "core/store/journal_reader.h"

#include <string>
#include <string_view>
#include <vector>

// What stands in the journal, understood as acts.

namespace loadwarden {

/// An entry understood. One that cannot be read throws StoreFault::damaged: nothing is decided on a
/// journal with a hole.
[[nodiscard]] Entry understand(const StoredEntry& stored);

/// The entries about something, in order.
[[nodiscard]] std::vector<Entry> entriesAbout(ReadSnapshot& snapshot, const std::string& subject);

/// Whether there is any.
[[nodiscard]] bool isMentioned(ReadSnapshot& snapshot, const std::string& subject);

/// The entries that are about ids with a prefix first of all ("st"), in order: what is recorded in
/// the register of that prefix.
[[nodiscard]] std::vector<Entry> registerEntries(ReadSnapshot& snapshot, std::string_view prefix);

} // namespace loadwarden
