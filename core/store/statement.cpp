#include "core/store/statement.h"

#include "core/store/connection_impl.h"

#include <QByteArray>
#include <QVariant>

#include <utility>

namespace loadwarden {

struct Statement::Impl {
    Connection* connection;
    std::string sql;
    PreparedQuery prepared;
    bool running = false;

    [[nodiscard]] StoreError error() const
    {
        connection->m_impl->failed = true;
        return engineError(connection->dialect(), prepared.query.lastError(), sql);
    }

    [[nodiscard]] const QString& known(std::string_view name)
    {
        for (const auto& [each, asQt] : prepared.names) {
            if (each == name) {
                return asQt;
            }
        }
        check(name);
        const QString asQt = QString::fromLatin1(name.data(), static_cast<qsizetype>(name.size()));
        return prepared.names.emplace_back(name, asQt).second;
    }

    /// Qt would take a value for a name that the statement does not have, and forget it.
    void check(std::string_view name) const
    {
        const auto isPart = [](char c) {
            return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9')
                   || c == '_';
        };
        for (auto at = sql.find(name); at != std::string::npos; at = sql.find(name, at + 1)) {
            const std::size_t behind = at + name.size();
            if (behind == sql.size() || !isPart(sql[behind])) {
                return;
            }
        }
        throw engineError(StoreFault::misuse, "no bind " + std::string(name) + " in: " + sql);
    }

    [[nodiscard]] StoreError wrongType(int column) const
    {
        return engineError(StoreFault::damaged,
                           "column " + std::to_string(column) + " has no such value, in: " + sql);
    }
};

Statement::Statement(Connection& connection, std::string_view sql)
    : m_impl(new Impl{&connection, std::string(sql), PreparedQuery{QSqlQuery(), {}}, false})
{
    auto& idle = connection.m_impl->idle;
    if (const auto found = idle.find(m_impl->sql); found != idle.end() && !found->second.empty()) {
        m_impl->prepared = std::move(found->second.back());
        found->second.pop_back();
        return;
    }
    QSqlQuery& query = m_impl->prepared.query;
    query = QSqlQuery(connection.m_impl->database);
    query.setForwardOnly(true);
    if (!query.prepare(QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size())))) {
        throw m_impl->error();
    }
}

Statement::Statement(Statement&& other) noexcept = default;

Statement::~Statement()
{
    if (!m_impl) {
        return;
    }
    m_impl->prepared.query.finish();
    m_impl->connection->m_impl->idle[m_impl->sql].push_back(std::move(m_impl->prepared));
}

Statement& Statement::bind(const char* name, std::int64_t value)
{
    m_impl->prepared.query.bindValue(m_impl->known(name), QVariant::fromValue<qlonglong>(value));
    return *this;
}

Statement& Statement::bind(const char* name, std::string_view text)
{
    m_impl->prepared.query.bindValue(
        m_impl->known(name), QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size())));
    return *this;
}

Statement& Statement::bindBytes(const char* name, std::string_view bytes)
{
    m_impl->prepared.query.bindValue(
        m_impl->known(name), QByteArray(bytes.data(), static_cast<qsizetype>(bytes.size())));
    return *this;
}

void Statement::execute()
{
    if (!m_impl->prepared.query.exec()) {
        throw m_impl->error();
    }
}

void Statement::run()
{
    execute();
    m_impl->prepared.query.finish();
}

bool Statement::step()
{
    if (!m_impl->running) {
        execute();
        m_impl->running = true;
    }
    if (m_impl->prepared.query.next()) {
        return true;
    }
    if (m_impl->prepared.query.lastError().isValid()) {
        throw m_impl->error();
    }
    m_impl->prepared.query.finish();
    m_impl->running = false;
    return false;
}

std::int64_t Statement::integer(int column) const
{
    const QVariant value = m_impl->prepared.query.value(column);
    bool isNumber = false;
    const std::int64_t number = value.toLongLong(&isNumber);
    if (!isNumber || value.isNull() || value.typeId() == QMetaType::QString) {
        throw m_impl->wrongType(column);
    }
    return number;
}

std::string Statement::text(int column) const
{
    const QVariant value = m_impl->prepared.query.value(column);
    if (value.typeId() != QMetaType::QString || value.isNull()) {
        throw m_impl->wrongType(column);
    }
    return value.toString().toStdString();
}

std::string Statement::bytes(int column) const
{
    const QVariant value = m_impl->prepared.query.value(column);
    if (value.typeId() != QMetaType::QByteArray || value.isNull()) {
        throw m_impl->wrongType(column);
    }
    return value.toByteArray().toStdString();
}

bool Statement::isNull(int column) const
{
    return m_impl->prepared.query.isNull(column);
}

} // namespace loadwarden
