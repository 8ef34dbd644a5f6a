#pragma once

#include "core/store/connection.h"

#include <filesystem>

namespace loadwarden {

/// Copies the whole database of a file, as of one moment, into a new file, and returns when that is
/// on the disk. What is there after a failure is taken away.
class FileCopy {
public:
    FileCopy(Connection& from, std::filesystem::path to);
    ~FileCopy();
    FileCopy(const FileCopy&) = delete;
    FileCopy& operator=(const FileCopy&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

    /// Gives the copy its name; before, it goes with this object.
    void publishAs(const std::filesystem::path& name);

private:
    void remove() const;

    std::filesystem::path m_path;
    bool m_published = false;
};

} // namespace loadwarden
