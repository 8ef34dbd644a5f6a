#pragma once

#include "core/journal/chain.h"
#include "core/journal/envelope.h"

#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden {

/// What somebody wants recorded: an envelope without what the store adds (seq, prev, recordedAt).
struct EntryDraft {
    JournalTime happenedAt;
    TimeSource happenedFrom = TimeSource::clock;
    std::string actor;
    std::string role;
    std::string workstation;
    std::string kind;
    std::int32_t version = 1;
    std::vector<std::string> subjects;
    std::string reason;
    std::int64_t supersedes = 0;
    std::int64_t basedOn = 0;
    std::string body = "{}"; ///< canonical JSON of an object
    /// Subjects about which nobody may have recorded anything newer than basedOn; else nothing is
    /// appended. Empty: it does not matter.
    std::vector<std::string> unchanged;
};

/// An entry as it stands in the journal.
struct StoredEntry {
    std::int64_t seq = 0;
    Hash hash;
    std::string bytes;

    friend bool operator==(const StoredEntry&, const StoredEntry&) = default;
};

} // namespace loadwarden
