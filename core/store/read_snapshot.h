#pragma once

#include "core/store/connection.h"
#include "core/store/statement.h"

#include <string_view>

namespace loadwarden {

/// Reads: everything through one of these is of one moment, whoever writes meanwhile. One at a time
/// for a connection. Ends when it is destroyed.
class ReadSnapshot {
public:
    explicit ReadSnapshot(Connection& connection);
    ~ReadSnapshot();
    ReadSnapshot(const ReadSnapshot&) = delete;
    ReadSnapshot& operator=(const ReadSnapshot&) = delete;

    /// Refuses (StoreFault::misuse) what is not a SELECT.
    [[nodiscard]] Statement statement(std::string_view sql);

    [[nodiscard]] const Dialect& dialect() const { return m_connection.dialect(); }

private:
    Connection& m_connection;
};

} // namespace loadwarden
