#pragma once

#include "core/acts/entry.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// Somebody's act as it is to be recorded. `happenedAt` without a value: now.
struct ToRecord {
    AnyAct act;
    std::vector<std::string> subjects;
    std::optional<JournalTime> happenedAt;
    TimeSource happenedFrom = TimeSource::typed; ///< where happenedAt has a value
    std::string reason;
    std::int64_t supersedes = 0;
    std::int64_t basedOn = 0;
    std::optional<FromPaper> paper;
};

/// Who records and in which role, as it stands in the entries.
struct Author {
    std::string id; ///< empty: the program itself
    Role role = Role::viewer;
};

/// The act as the entry `seq` that it would be if it were recorded at `now`.
[[nodiscard]] Entry asEntry(const ToRecord& act, const Author& author, std::int64_t seq,
                            const JournalTime& now, const std::string& workstation = {});

} // namespace loadwarden
