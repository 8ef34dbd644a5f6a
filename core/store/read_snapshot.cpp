#include "core/store/read_snapshot.h"

#include "core/store/connection_impl.h"

namespace loadwarden {

ReadSnapshot::ReadSnapshot(Connection& connection) : m_connection(connection)
{
    bool begun = false;
    try {
        for (const std::string& sql : m_connection.dialect().beginRead()) {
            m_connection.say(sql);
            begun = true;
        }
    } catch (...) {
        if (begun) {
            QSqlQuery(m_connection.m_impl->database).exec(QStringLiteral("ROLLBACK"));
        }
        throw;
    }
}

ReadSnapshot::~ReadSnapshot()
{
    // Nothing was changed, so it does not matter whether this is heard.
    QSqlQuery(m_connection.m_impl->database).exec(QStringLiteral("ROLLBACK"));
}

Statement ReadSnapshot::statement(std::string_view sql)
{
    if (!sql.starts_with("SELECT ")) {
        throw engineError(StoreFault::misuse, "not a SELECT: " + std::string(sql));
    }
    return {m_connection, sql};
}

} // namespace loadwarden
