#pragma once

#include "core/acts/entry.h"
#include "core/store/journal_reader.h"

#include <string>
#include <string_view>
#include <vector>

// What stands in the journal, understood as acts. Everything throws StoreError.

namespace loadwarden {

/// The entries about something, in order.
[[nodiscard]] std::vector<Entry> entriesAbout(ReadSnapshot& snapshot, const std::string& subject);

/// Whether there is any.
[[nodiscard]] bool isMentioned(ReadSnapshot& snapshot, const std::string& subject);

/// The entries about anything in the register of a prefix ("st") itself, in order; only of ids
/// whose rest is `from` or comes after it among the bytes.
[[nodiscard]] std::vector<Entry> registerEntries(ReadSnapshot& snapshot, std::string_view prefix,
                                                 std::string_view from = {});

} // namespace loadwarden
