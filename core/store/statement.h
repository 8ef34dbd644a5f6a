#pragma once

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

namespace loadwarden {

class Connection;
class PreparedStatement;

/// One prepared statement with named binds (":name"), got from a ReadSnapshot or a
/// WriteTransaction and not to be kept longer than that. Everything that fails throws StoreError
/// with the statement's text.
class Statement {
public:
    ~Statement();
    Statement(Statement&& other) noexcept;
    Statement(const Statement&) = delete;
    Statement& operator=(const Statement&) = delete;
    Statement& operator=(Statement&&) = delete;

    Statement& bind(const char* name, std::int64_t value);
    Statement& bind(const char* name, std::string_view text);
    /// For Dialect::textOf().
    Statement& bindBytes(const char* name, std::string_view bytes);

    /// Runs it to the end; rows are not wanted. It can then be bound and run anew.
    void run();

    /// The next row, running the statement at the first call; false behind the last row.
    [[nodiscard]] bool step();

    /// Of the row that step() gave, columns counted from 0. A value of another type, or none, is
    /// StoreFault::damaged: the schema does not allow it.
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] std::string text(int column) const;
    /// Of Dialect::bytesOf().
    [[nodiscard]] std::string bytes(int column) const;
    /// The same, there until the next step.
    [[nodiscard]] std::string_view bytesNow(int column) const;
    [[nodiscard]] bool isNull(int column) const;

private:
    friend class ReadSnapshot;
    friend class WriteTransaction;

    Statement(Connection& connection, std::string_view sql);

    Connection* m_connection;
    std::unique_ptr<PreparedStatement> m_prepared; ///< goes back to the connection
};

} // namespace loadwarden
