#pragma once

#include "core/journal/chain.h"
#include "core/store/posix_file.h"
#include "core/store/read_snapshot.h"

#include <filesystem>
#include <optional>
#include <string>

namespace loadwarden {

/// The newest entry that this computer has seen recorded, in a small file outside the database. It
/// shows at the next opening that newest entries are gone, which the database itself cannot show:
/// copied without its write-ahead log, or put back to an older state. It is not synced, so after a
/// power failure it may be behind the journal, never before it.
class HeadWitness {
public:
    /// Made when there is none; the folder too.
    HeadWitness(const std::filesystem::path& folder, const std::string& journalId);

    /// What it has seen; nullopt when nothing, or when a power failure left nothing to read.
    [[nodiscard]] std::optional<Head> seen() const;

    /// Has seen this now. Also for a journal restored from a backup, which begins anew there.
    void note(const Head& head);

    /// Throws StoreFault::headChanged when the journal does not contain what was seen.
    void check(ReadSnapshot& snapshot) const;

private:
    PosixFile m_file;
};

} // namespace loadwarden
