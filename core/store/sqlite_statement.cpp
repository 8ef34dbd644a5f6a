#include "core/store/prepared_statement.h"
#include "core/store/store_error.h"

#include <QSqlDatabase>
#include <QSqlDriver>
#include <QVariant>

#include <algorithm>
#include <sqlite3.h>
#include <vector>

namespace loadwarden {
namespace {

/// The newest database that the library has opened in this thread.
thread_local sqlite3* opened = nullptr;

extern "C" int loadwardenNotesOpened(sqlite3* database, char** /*error*/,
                                     const sqlite3_api_routines* /*routines*/)
{
    opened = database;
    return SQLITE_OK;
}

class SqliteStatement final : public PreparedStatement {
public:
    SqliteStatement(sqlite3& database, const Dialect& dialect, std::string_view sql)
        : PreparedStatement(dialect, sql), m_database(database)
    {
        if (sqlite3_prepare_v3(&database, sql.data(), static_cast<int>(sql.size()),
                               SQLITE_PREPARE_PERSISTENT, &m_statement, nullptr)
            != SQLITE_OK) {
            failNow();
        }
        m_isBound.resize(static_cast<std::size_t>(sqlite3_bind_parameter_count(m_statement)));
    }
    ~SqliteStatement() override { sqlite3_finalize(m_statement); }

    void bind(std::string_view name, std::int64_t value) override
    {
        check(sqlite3_bind_int64(m_statement, indexOf(name), value));
    }
    void bindText(std::string_view name, std::string_view text) override
    {
        check(sqlite3_bind_text64(m_statement, indexOf(name), dataOf(text), text.size(),
                                  SQLITE_TRANSIENT, SQLITE_UTF8));
    }
    void bindBytes(std::string_view name, std::string_view bytes) override
    {
        check(sqlite3_bind_blob64(m_statement, indexOf(name), dataOf(bytes), bytes.size(),
                                  SQLITE_TRANSIENT));
    }

    bool step() override
    {
        if (!m_isRunning) {
            checkBound();
            m_isRunning = true;
        }
        const int result = sqlite3_step(m_statement);
        if (result == SQLITE_ROW) {
            return true;
        }
        m_isRunning = false;
        if (result != SQLITE_DONE) {
            failNow();
        }
        sqlite3_reset(m_statement);
        return false;
    }
    void finish() noexcept override
    {
        sqlite3_reset(m_statement);
        sqlite3_clear_bindings(m_statement);
        m_isRunning = false;
        m_isBound.assign(m_isBound.size(), false);
    }

    bool isNull(int column) override
    {
        return sqlite3_column_type(m_statement, column) == SQLITE_NULL;
    }
    std::int64_t integer(int column) override
    {
        want(column, SQLITE_INTEGER);
        return sqlite3_column_int64(m_statement, column);
    }
    std::string text(int column) override
    {
        want(column, SQLITE_TEXT);
        const auto* const text =
            reinterpret_cast<const char*>(sqlite3_column_text(m_statement, column));
        return {text, static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column))};
    }
    std::string_view bytes(int column) override
    {
        want(column, SQLITE_BLOB);
        const auto* const bytes =
            static_cast<const char*>(sqlite3_column_blob(m_statement, column));
        return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(m_statement, column))};
    }

private:
    [[nodiscard]] int indexOf(std::string_view name)
    {
        // Nearly always they are bound in the order in which they stand.
        for (std::size_t i = 0; i < m_isBound.size(); ++i) {
            m_latest = m_latest + 1 < m_isBound.size() ? m_latest + 1 : 0;
            const int index = static_cast<int>(m_latest) + 1;
            if (name == sqlite3_bind_parameter_name(m_statement, index)) {
                m_isBound[m_latest] = true;
                return index;
            }
        }
        noBind(name);
    }

    void checkBound() const
    {
        const auto unbound = std::ranges::find(m_isBound, false);
        if (unbound != m_isBound.end() && sqlite3_stmt_isexplain(m_statement) == 0) {
            // SQLite would take it for NULL.
            const auto index = static_cast<int>(unbound - m_isBound.begin()) + 1;
            throw engineError(StoreFault::misuse,
                              std::string(sqlite3_bind_parameter_name(m_statement, index))
                                  + " is not bound in: " + sql());
        }
    }
    void check(int result) const
    {
        if (result != SQLITE_OK) {
            failNow();
        }
    }
    void want(int column, int type) const
    {
        if (sqlite3_column_type(m_statement, column) != type) {
            wrongType(column);
        }
    }
    [[noreturn]] void failNow() const
    {
        fail(std::to_string(sqlite3_extended_errcode(&m_database)), sqlite3_errmsg(&m_database));
    }

    sqlite3& m_database;
    sqlite3_stmt* m_statement = nullptr;
    std::vector<bool> m_isBound;
    std::size_t m_latest = 0; ///< of the binds
    bool m_isRunning = false;
};

} // namespace

std::unique_ptr<PreparedStatement> prepareBySqlite(sqlite3& database, const Dialect& dialect,
                                                   std::string_view sql)
{
    return std::make_unique<SqliteStatement>(database, dialect, sql);
}

void watchSqlite()
{
    sqlite3_auto_extension(reinterpret_cast<void (*)()>(&loadwardenNotesOpened));
    opened = nullptr;
}

sqlite3* sqliteHandle(const QSqlDatabase& database)
{
    const QVariant handle = database.driver()->handle();
    if (!handle.isValid() || qstrcmp(handle.typeName(), "sqlite3*") != 0) {
        return nullptr;
    }
    auto* const of = *static_cast<sqlite3* const*>(handle.constData());
    return of == opened ? of : nullptr;
}

} // namespace loadwarden
