#pragma once

#include <cstdint>
#include <filesystem>
#include <string>
#include <variant>

namespace loadwarden {

/// A journal in a file of this computer (SQLite).
struct SqliteFile {
    std::filesystem::path path;
};

/// A journal on a server (PostgreSQL). Empty members are left to the client library's own defaults.
struct PostgresServer {
    std::string host; ///< a name, an address, or the folder of the server's socket
    int port = 5432;
    std::string database;
    std::string user;
    std::string password;
    std::string schema = "public"; ///< lower-case letters, digits and "_" only
};

using StorePlace = std::variant<SqliteFile, PostgresServer>;

enum class Access : std::uint8_t {
    create, ///< makes a new, empty database; refused where there is one
    write,
    read ///< cannot change anything
};

/// Whether a transaction is on the disk when it is confirmed. `off` is for figures and for files
/// that are built anew after a power cut.
enum class Syncing : std::uint8_t { full, off };

} // namespace loadwarden
