#pragma once

#include "core/desk/sign_in.h"
#include "core/store/backup.h"
#include "core/store/rebuild.h"

#include <cstdint>
#include <filesystem>

namespace loadwarden {

/// Writes a verified backup while others go on working. A lead's or supervisor's. Throws StoreError
/// as backUp() does.
[[nodiscard]] OrRefusal<Backup> backUpJournal(Office& office, const SignedIn& who,
                                              const std::filesystem::path& target,
                                              Progress& progress);

/// The first, short half of it, for who makes the second beside his work: whether somebody may, and
/// the seal. Throws StoreError.
[[nodiscard]] OrRefusal<Seal> sealForBackup(Office& office, const SignedIn& who);

/// The second, long half: reads the journal's file by a connection of its own, on any thread, while
/// others write. Throws StoreError as backUp() does.
[[nodiscard]] Backup writeBackup(const std::filesystem::path& journal, const Seal& seal,
                                 const std::filesystem::path& target, Progress& progress);

/// Fills the index tables anew from the entries and says where they differ from what stands there,
/// and for whom there is a PIN (s_pin) that no entry sets, or none where one does; changes nothing.
/// For a journal whose entries verify. Nobody else writes meanwhile: throws StoreFault::inUse where
/// somebody works in it.
[[nodiscard]] RebuildReport compareTables(const std::filesystem::path& file, Progress& progress);

/// What a restored journal is for.
enum class Restoring : std::uint8_t {
    drill, ///< to see that it works: this computer goes on with the journal itself
    goOn   ///< to go on working in it: this computer takes the journal from before for lost
};

struct RestoredJournal {
    Restored restored;
    std::int64_t lost =
        0; ///< entries that this computer has seen and that the backup does not have
};

/// Makes a new journal's file of a backup, verified against the seals that this user keeps. Nobody
/// can sign in to a file that is not there yet, so it asks nobody; the file says that it was
/// restored. Throws StoreError as restoreBackup() does.
RestoredJournal restoreJournal(const RestoreRequest& request, Restoring restoring,
                               const Workplace& place, Progress& progress);

} // namespace loadwarden
