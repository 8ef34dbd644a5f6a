#pragma once

#include "core/quantities/clock.h"
#include "core/quantities/zone.h"
#include "core/store/head_witness.h"
#include "core/store/progress.h"
#include "core/store/seal_book.h"
#include "core/store/verify.h"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace loadwarden {

/// A backup that was written, read back whole, and found sound.
struct Backup {
    std::filesystem::path file;
    Seal seal; ///< made for it; stands in the journal, in the backup and outside both
    VerifyReport report;
    std::uintmax_t bytes = 0;
};

/// Writes all of a journal's file to another file while others may go on working, and verifies what
/// was written. The name appears only when it is whole. Throws StoreFault::exists where there is a
/// file, damaged when the copy does not verify, misuse for a journal on a server, whose own tools
/// make its backups.
[[nodiscard]] Backup backUp(Connection& connection, SealBook& seals,
                            const std::filesystem::path& target, Progress& progress);

/// The same after the journal was sealed: it only reads, so that it can go on beside other work.
/// The seal is of an entry that the copy holds.
[[nodiscard]] Backup backUpSealed(Connection& connection, const Seal& seal,
                                  const std::filesystem::path& target, Progress& progress);

/// What to make of a backup, and where.
struct RestoreRequest {
    std::filesystem::path backup;
    std::filesystem::path
        target; ///< must not be there yet: nothing is ever restored over something
    std::string workstation;
    std::vector<Seal> seals; ///< from elsewhere, to verify the backup against
    std::vector<SealPublicKey> keys;
    std::vector<Head> expected;
};

struct Restored {
    Head backupHead;    ///< the newest entry that the backup knew
    Instant backupTime; ///< when that was recorded
    Head head;          ///< the entry "journal.restored" behind it
};

/// Verifies a backup and makes a new journal's file of it, in which lot control numbers that may
/// have been given since are skipped and an entry says that it was restored. `witness` begins anew
/// with it, if there is one. Throws StoreFault::damaged, naming the first fault, for a backup that
/// does not verify.
Restored restoreBackup(const RestoreRequest& request, const Clock& clock, const Zone& zone,
                       Progress& progress);

/// The kind of that entry.
inline constexpr std::string_view restoredKind = "journal.restored";

} // namespace loadwarden
