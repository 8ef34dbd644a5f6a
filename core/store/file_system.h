#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace loadwarden {

/// The type of the file system on which an absolute path lies, as /proc/self/mountinfo names it
/// (proc(5)); empty when the text does not say.
[[nodiscard]] std::string fileSystemOf(const std::filesystem::path& path,
                                       std::string_view mountinfo);

/// Whether another computer, or the host of a virtual one, may write such a file system too, so
/// that locks and shared memory do not hold what SQLite builds on them.
[[nodiscard]] bool isShared(std::string_view fileSystem);

/// Throws StoreFault::network when the file, or the folder in which it is to be, lies on such a
/// file system.
void refuseSharedFileSystem(const std::filesystem::path& file);

} // namespace loadwarden
