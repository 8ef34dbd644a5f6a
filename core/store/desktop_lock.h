#pragma once

#include "core/store/posix_file.h"

#include <filesystem>
#include <optional>
#include <string>

namespace loadwarden {

/// One desktop for a file: held by who writes acts into a journal's file, as long as he has it
/// open. Readers need none. The lock is the operating system's and ends with the process, however
/// that ends; the file says who has it.
class DesktopLock {
public:
    /// Throws StoreFault::inUse with the holder's process and computer, also when the file names
    /// another computer, whose lock cannot be seen from here.
    explicit DesktopLock(const std::filesystem::path& journal);
    ~DesktopLock();
    DesktopLock(const DesktopLock&) = delete;
    DesktopLock& operator=(const DesktopLock&) = delete;

    /// The lock of a process that ended without giving it back, in words: it crashed, was killed,
    /// or the power failed.
    [[nodiscard]] const std::optional<std::string>& stale() const { return m_stale; }

    [[nodiscard]] static std::filesystem::path fileOf(const std::filesystem::path& journal);

private:
    PosixFile m_file;
    std::optional<std::string> m_stale;
};

} // namespace loadwarden
