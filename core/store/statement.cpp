#include "core/store/statement.h"

#include "core/store/connection_impl.h"

#include <utility>

namespace loadwarden {

Statement::Statement(Connection& connection, std::string_view sql) : m_connection(&connection)
{
    Connection::Impl& impl = *connection.m_impl;
    if (const auto found = impl.idle.find(sql);
        found != impl.idle.end() && !found->second.empty()) {
        m_prepared = std::move(found->second.back());
        found->second.pop_back();
        return;
    }
    try {
        m_prepared = impl.sqlite != nullptr
                         ? prepareBySqlite(*impl.sqlite, connection.dialect(), sql)
                         : prepareByQt(impl.database, connection.dialect(), sql);
    } catch (const StoreError&) {
        impl.failed = true;
        throw;
    }
}

Statement::Statement(Statement&& other) noexcept = default;

Statement::~Statement()
{
    if (!m_prepared) {
        return;
    }
    m_prepared->finish();
    auto& idle = m_connection->m_impl->idle;
    const auto place = idle.find(std::string_view(m_prepared->sql()));
    auto& others = place != idle.end() ? place->second : idle[m_prepared->sql()];
    others.push_back(std::move(m_prepared));
}

Statement& Statement::bind(const char* name, std::int64_t value)
{
    m_prepared->bind(name, value);
    return *this;
}

Statement& Statement::bind(const char* name, std::string_view text)
{
    m_prepared->bindText(name, text);
    return *this;
}

Statement& Statement::bindBytes(const char* name, std::string_view bytes)
{
    m_prepared->bindBytes(name, bytes);
    return *this;
}

void Statement::run()
{
    while (step()) {
    }
}

bool Statement::step()
{
    try {
        return m_prepared->step();
    } catch (const StoreError&) {
        m_connection->m_impl->failed = true;
        throw;
    }
}

std::int64_t Statement::integer(int column) const
{
    return m_prepared->integer(column);
}

std::string Statement::text(int column) const
{
    return m_prepared->text(column);
}

std::string Statement::bytes(int column) const
{
    return std::string(m_prepared->bytes(column));
}

std::string_view Statement::bytesNow(int column) const
{
    return m_prepared->bytes(column);
}

bool Statement::isNull(int column) const
{
    return m_prepared->isNull(column);
}

} // namespace loadwarden
