#include "core/store/write_transaction.h"

#include "core/store/connection_impl.h"

namespace loadwarden {
namespace {

constexpr int attempts = 3;

} // namespace

WriteTransaction::WriteTransaction(Connection& connection) : m_connection(connection)
{
    if (m_connection.access() == Access::read) {
        throw engineError(StoreFault::misuse, "the connection was opened for reading");
    }
    m_connection.m_impl->failed = false;
    for (int attempt = 1; !m_open; ++attempt) {
        bool begun = false;
        try {
            for (const std::string& sql : m_connection.dialect().beginWrite()) {
                m_connection.say(sql);
                begun = true;
            }
            m_open = true;
        } catch (const StoreError& error) {
            if (begun) {
                QSqlQuery(m_connection.m_impl->database).exec(QStringLiteral("ROLLBACK"));
            }
            if (error.fault() != StoreFault::busy || attempt == attempts) {
                throw;
            }
        }
    }
}

WriteTransaction::~WriteTransaction()
{
    if (m_open) {
        // If this is not heard either, the engine undoes it when the connection ends.
        QSqlQuery(m_connection.m_impl->database).exec(QStringLiteral("ROLLBACK"));
    }
}

Statement WriteTransaction::statement(std::string_view sql)
{
    if (!m_open) {
        throw engineError(StoreFault::misuse, "the transaction has ended: " + std::string(sql));
    }
    return {m_connection, sql};
}

void WriteTransaction::define(std::string_view sql)
{
    if (!m_open) {
        throw engineError(StoreFault::misuse, "the transaction has ended: " + std::string(sql));
    }
    try {
        m_connection.say(std::string(sql));
    } catch (const StoreError&) {
        m_connection.m_impl->failed = true;
        throw;
    }
}

void WriteTransaction::commit()
{
    if (!m_open) {
        throw engineError(StoreFault::misuse, "the transaction has ended already");
    }
    if (m_connection.m_impl->failed) {
        throw engineError(StoreFault::misuse, "a statement failed, so nothing can be committed");
    }
    m_connection.say("COMMIT");
    m_open = false;
}

} // namespace loadwarden
