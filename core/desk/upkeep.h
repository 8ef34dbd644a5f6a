#pragma once

#include "core/desk/sign_in.h"
#include "core/store/backup.h"

#include <filesystem>

namespace loadwarden {

/// Writes a verified backup while others go on working. A lead's or supervisor's. Throws StoreError
/// as backUp() does.
[[nodiscard]] OrRefusal<Backup> backUpJournal(Office& office, const SignedIn& who,
                                              const std::filesystem::path& target,
                                              Progress& progress);

/// Makes a new journal's file of a backup, verified against the seals that this user keeps. Nobody
/// can sign in to a file that is not there yet, so it asks nobody; the file says that it was
/// restored. Throws StoreError as restoreBackup() does.
Restored restoreJournal(const RestoreRequest& request, const Workplace& place, Progress& progress);

} // namespace loadwarden
