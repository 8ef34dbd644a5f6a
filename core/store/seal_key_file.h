#pragma once

#include "core/journal/seal.h"

#include <filesystem>

namespace loadwarden {

/// The folder in which this user's Loadwarden keeps what does not belong into a database:
/// $XDG_DATA_HOME/loadwarden, or ~/.local/share/loadwarden (XDG Base Directory Specification).
/// Throws StoreFault::missing when the user has no home.
[[nodiscard]] std::filesystem::path userDataFolder();

/// The workstation's key in its usual place.
[[nodiscard]] std::filesystem::path usualSealKeyPath();

/// Reads a workstation's key. Throws StoreFault::missing; denied when others may read the file,
/// since a seal shows nothing then; damaged when it is no key.
[[nodiscard]] SealKey readSealKey(const std::filesystem::path& path);

/// Makes a new key and its file, readable for this user alone and on the disk when it returns.
/// Throws StoreFault::exists where there is one: seals are worth only as much as their key is old.
[[nodiscard]] SealKey createSealKey(const std::filesystem::path& path);

} // namespace loadwarden
