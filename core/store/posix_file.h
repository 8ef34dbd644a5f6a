#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <string_view>

namespace loadwarden {

/// A file beside the database: locks, keys, seals. Everything that fails throws StoreError with the
/// path. Never to be used for the database's own file: closing it would end SQLite's locks on it.
class PosixFile {
public:
    enum class Mode : std::uint8_t {
        read,
        readWrite, ///< made where there is none, for its owner alone
        createNew, ///< StoreFault::exists where there is one; for its owner alone
        append     ///< made where there is none, for its owner alone
    };

    PosixFile(std::filesystem::path path, Mode mode);
    ~PosixFile();
    PosixFile(const PosixFile&) = delete;
    PosixFile& operator=(const PosixFile&) = delete;

    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

    /// The first 64 KiB.
    [[nodiscard]] std::string read() const;
    /// In place of what there was.
    void replace(std::string_view text);
    /// At the place where the file stands; at its end for Mode::append.
    void write(std::string_view text);
    /// Returns when it is on the disk.
    void sync();
    /// Takes the file for this process; false when another has it. Ends with this object, however
    /// the process ends.
    [[nodiscard]] bool lock();
    /// Whether its owner is this user and nobody else may read it.
    [[nodiscard]] bool isPrivate() const;

private:
    std::filesystem::path m_path;
    int m_descriptor = -1;
};

/// Makes sure that new names in the folder, and names that are gone, are so on the disk.
void syncFolder(const std::filesystem::path& folder);

/// Makes the folder and those above it, each for its owner alone.
void makePrivateFolder(const std::filesystem::path& folder);

/// Gives a finished file its name, which nobody must have yet (StoreFault::exists), on the disk.
void publish(const std::filesystem::path& from, const std::filesystem::path& to);

/// Makes sure that what another wrote into the file is on the disk.
void syncFile(const std::filesystem::path& path);

} // namespace loadwarden
