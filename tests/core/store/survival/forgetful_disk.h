#pragma once

#include <cstdint>

/// A disk that loses at a power cut what was not synced: a VFS of SQLite for this process
/// (https://www.sqlite.org/vfs.html). What is written goes to memory, and only a sync brings it to
/// the file. At the cut each unsynced write is lost, kept, or kept in part, at random, since a disk
/// may have written any of them; then the process ends. Names of files are never lost.
namespace loadwarden::testing::forgetful_disk {

/// From now on all that SQLite opens in this process lies on such a disk. Files must have been
/// closed before.
void install();

/// The power fails at that many writes from now.
void cutAfterWrites(std::int64_t writes, std::uint64_t seed);

/// How many syncs there were since install().
[[nodiscard]] std::int64_t syncs();

/// The status with which the process ends at the cut.
inline constexpr int cutStatus = 77;

} // namespace loadwarden::testing::forgetful_disk
