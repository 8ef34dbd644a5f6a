#pragma once

#include <cstdint>
#include <stdexcept>
#include <string>

namespace loadwarden {

/// What kind of thing went wrong with the store, by what has to be done about it.
enum class StoreFault : std::uint8_t {
    busy,        ///< somebody else kept writing
    inUse,       ///< another desktop has the file
    full,        ///< no room on the disk
    readOnly,    ///< the file or its folder cannot be written
    missing,     ///< there is nothing at that place
    exists,      ///< there is something already at that place
    denied,      ///< the operating system or the server does not let this user in
    damaged,     ///< what is read cannot have been written by this program
    foreign,     ///< a database, but not one of this program
    newer,       ///< written by a newer version of this program
    older,       ///< must be brought to this version first
    network,     ///< the file lies on a file system on which locks do not hold
    unreachable, ///< the server does not answer
    headChanged, ///< the newest entry is not what it was or what the tables beside it say
    refused,     ///< the database's own rules forbid it: append-only, unique, checks
    device,      ///< the disk reports an error
    misuse       ///< a mistake of the program, never of its user
};

/// Everything that goes wrong in core/store is thrown as this. The sentences are plain English and
/// end with a full stop.
class StoreError : public std::runtime_error {
public:
    StoreError(StoreFault fault, std::string says, std::string next, std::string detail = {});

    [[nodiscard]] StoreFault fault() const { return m_fault; }
    /// What went wrong.
    [[nodiscard]] const std::string& says() const { return m_says; }
    /// What a person can do about it.
    [[nodiscard]] const std::string& next() const { return m_next; }
    /// The text of the query and the words of the engine, for whoever is asked for help; may be
    /// empty.
    [[nodiscard]] const std::string& detail() const { return m_detail; }

private:
    StoreFault m_fault;
    std::string m_says;
    std::string m_next;
    std::string m_detail;
};

/// The error of a query that the engine refused, with the sentences that its kind usually needs.
[[nodiscard]] StoreError engineError(StoreFault fault, std::string detail);

} // namespace loadwarden
