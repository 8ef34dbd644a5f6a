#pragma once

#include "core/desk/office.h"
#include "core/store/progress.h"
#include "core/store/verify.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string_view>
#include <vector>

// The journal read from its beginning to its end: verified, or copied out. By a connection of its
// own, so that nobody waits for it.

namespace loadwarden {

/// Verifies the journal against its own chain and seals, the seals that this user keeps outside it
/// and the newest entry that this computer has seen; `expected` are heads from paper beside that.
/// Throws StoreError as verifyJournal() does.
[[nodiscard]] VerifyReport verifyHere(Office& office, std::vector<Head> expected,
                                      Progress& progress);

/// Gives every entry's bytes, a JSON object each, in order. False: it was cancelled. Throws
/// StoreError.
bool forEachLine(Office& office, const std::function<void(std::string_view)>& take,
                 Progress& progress);

/// What was written.
struct JournalCopy {
    std::int64_t entries = 0;
    std::int64_t bytes = 0;
    bool isCancelled = false; ///< nothing was written then
};

/// Whether a file of that name may be replaced.
enum class IfThere : std::uint8_t { refuse, replace };

/// Writes the entries as JSON Lines. The file has that name only once it is whole; what there was
/// stays until then. Throws StoreError: exists where there is a file that may not be replaced.
[[nodiscard]] JournalCopy copyLines(Office& office, const std::filesystem::path& target,
                                    IfThere ifThere, Progress& progress);

} // namespace loadwarden
