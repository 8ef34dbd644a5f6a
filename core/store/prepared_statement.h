#pragma once

#include "core/store/dialect.h"

#include <cstdint>
#include <memory>
#include <string>
#include <string_view>

class QSqlDatabase;
struct sqlite3;

namespace loadwarden {

/// A statement that an engine has prepared, with its binds and rows: what Statement is made of.
/// What fails throws StoreError.
class PreparedStatement {
public:
    virtual ~PreparedStatement() = default;
    PreparedStatement(const PreparedStatement&) = delete;
    PreparedStatement& operator=(const PreparedStatement&) = delete;

    [[nodiscard]] const std::string& sql() const { return m_sql; }

    virtual void bind(std::string_view name, std::int64_t value) = 0;
    virtual void bindText(std::string_view name, std::string_view text) = 0;
    virtual void bindBytes(std::string_view name, std::string_view bytes) = 0;

    /// The next row, running it at the first call; false behind the last. It can then be run anew.
    [[nodiscard]] virtual bool step() = 0;
    /// Ends what runs.
    virtual void finish() noexcept = 0;

    [[nodiscard]] virtual bool isNull(int column) = 0;
    [[nodiscard]] virtual std::int64_t integer(int column) = 0;
    [[nodiscard]] virtual std::string text(int column) = 0;
    /// There until the next step.
    [[nodiscard]] virtual std::string_view bytes(int column) = 0;

protected:
    PreparedStatement(const Dialect& dialect, std::string_view sql) : m_dialect(dialect), m_sql(sql)
    {
    }

    /// The bytes of a text to be bound; a null pointer would be taken for NULL.
    [[nodiscard]] static const char* dataOf(std::string_view text)
    {
        return text.data() == nullptr ? "" : text.data();
    }

    /// Throws what the engine says.
    [[noreturn]] void fail(const std::string& code, std::string words) const;
    [[noreturn]] void noBind(std::string_view name) const;
    [[noreturn]] void wrongType(int column) const;

private:
    Dialect m_dialect;
    std::string m_sql;
};

/// Through Qt, which every engine can.
[[nodiscard]] std::unique_ptr<PreparedStatement>
prepareByQt(const QSqlDatabase& database, const Dialect& dialect, std::string_view sql);

/// Through SQLite itself: values go in and out as they are, and not by way of QVariant and UTF-16.
[[nodiscard]] std::unique_ptr<PreparedStatement>
prepareBySqlite(sqlite3& database, const Dialect& dialect, std::string_view sql);

/// To be called before Qt opens a database of SQLite, for sqliteHandle().
void watchSqlite();

/// The handle of a database that Qt has just opened in this thread, where its driver works with the
/// library that this program is linked with; else null: then only Qt may use it.
[[nodiscard]] sqlite3* sqliteHandle(const QSqlDatabase& database);

} // namespace loadwarden
