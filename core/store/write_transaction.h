#pragma once

#include "core/store/connection.h"
#include "core/store/statement.h"

#include <string_view>

namespace loadwarden {

/// Writes: the only class that does. It has the database for itself from its beginning, so that the
/// head read first is the head still at the end; nothing slow belongs inside. What is not committed
/// is undone when it is destroyed. One at a time for a connection.
class WriteTransaction {
public:
    /// Waits for another's transaction, at most three times the connection's patience; then throws
    /// StoreFault::busy.
    explicit WriteTransaction(Connection& connection);
    ~WriteTransaction();
    WriteTransaction(const WriteTransaction&) = delete;
    WriteTransaction& operator=(const WriteTransaction&) = delete;

    [[nodiscard]] Statement statement(std::string_view sql);

    /// Runs a statement without binds or rows that is said once, such as one that makes a table;
    /// not every engine prepares those.
    void define(std::string_view sql);

    /// When it returns, everything is on the disk. When it throws, nothing was recorded, or, after
    /// StoreFault::device or unreachable, it is not known: read again. A transaction in which a
    /// statement failed is not committed (StoreFault::misuse).
    void commit();

    [[nodiscard]] const Dialect& dialect() const { return m_connection.dialect(); }

private:
    Connection& m_connection;
    bool m_open = false;
};

} // namespace loadwarden
