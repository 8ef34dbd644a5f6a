#pragma once

#include "core/desk/office.h"
#include "core/store/progress.h"
#include "core/store/verify.h"

#include <cstdint>
#include <filesystem>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

// The journal read from its beginning to its end: verified, or copied out. By a connection of its
// own, so that nobody waits for it.

namespace loadwarden {

/// Verifies the journal against its own chain and seals, the seals that this user keeps outside it
/// and the newest entry that this computer has seen; `expected` are heads from paper beside that.
/// `pages` as in VerifyRequest; that part shows no progress and cannot be cancelled. Throws
/// StoreError as verifyJournal() does.
[[nodiscard]] VerifyReport verifyHere(Office& office, std::vector<Head> expected, bool pages,
                                      Progress& progress);

/// A key by which seals were made, and who says that it is the journal's.
struct SealedBy {
    SealsOfKey seals;
    std::string recordedBy; ///< a name; empty: the first seal alone says so
    Instant recordedAt{};   ///< meaningless then
    std::string why;
};

/// The keys of a report. Throws StoreError where the journal cannot be read that far.
[[nodiscard]] std::vector<SealedBy> sealedBy(Office& office, const VerifyReport& report);

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

/// Whether a file is the journal's, or one of those beside it (its log, its lock), or of what this
/// user keeps outside it: nothing else may ever be written there.
[[nodiscard]] bool isOfJournal(const std::filesystem::path& journal, const Workplace& place,
                               const std::filesystem::path& target);

/// Writes the entries as JSON Lines. The file has that name only once it is whole; what there was
/// stays until then. Throws StoreError: exists where there is a file that may not be replaced,
/// misuse where it is one of the journal's.
[[nodiscard]] JournalCopy copyLines(Office& office, const std::filesystem::path& target,
                                    IfThere ifThere, Progress& progress);

} // namespace loadwarden
