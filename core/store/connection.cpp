#include "core/store/connection.h"

#include "core/store/connection_impl.h"

#include <QVariant>

#include <algorithm>

namespace loadwarden {
namespace {

namespace fs = std::filesystem;

Dialect dialectOf(const StorePlace& place)
{
    return Dialect(std::holds_alternative<SqliteFile>(place) ? Dialect::Engine::sqlite
                                                             : Dialect::Engine::postgres);
}

/// SQLite would make a file where there is none, and an empty one is a database to it.
void checkFile(const SqliteFile& file, Access access)
{
    std::error_code error;
    const fs::file_status status = fs::status(file.path, error);
    if (status.type() == fs::file_type::none) {
        throw StoreError(StoreFault::denied, "The path " + file.path.string() + " cannot be read.",
                         "Ask whoever runs this computer for access.", error.message());
    }
    if (access == Access::create) {
        if (fs::exists(status)) {
            throw StoreError(StoreFault::exists,
                             "There is something at " + file.path.string() + " already.",
                             "Choose another place, or open it instead of creating it.");
        }
        return;
    }
    if (!fs::exists(status)) {
        throw StoreError(StoreFault::missing, "There is no journal at " + file.path.string() + '.',
                         "Check the path, or create a journal there.");
    }
    if (!fs::is_regular_file(status)) {
        throw StoreError(StoreFault::foreign, file.path.string() + " is not a file.",
                         "Give the path of the journal's file.");
    }
}

void checkSchemaName(const PostgresServer& server)
{
    const bool plain = !server.schema.empty() && std::ranges::all_of(server.schema, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '_';
    });
    if (!plain) {
        throw StoreError(StoreFault::misuse,
                         "\"" + server.schema + "\" cannot be the name of a schema.",
                         "Use lower-case letters, digits and \"_\" only.");
    }
}

void describe(QSqlDatabase& database, const StorePlace& place, const ConnectionOptions& options)
{
    if (const auto* const file = std::get_if<SqliteFile>(&place)) {
        checkFile(*file, options.access);
        database.setDatabaseName(QString::fromStdString(file->path.string()));
        QString text = QStringLiteral("QSQLITE_BUSY_TIMEOUT=%1").arg(options.patience.count());
        if (options.access == Access::read) {
            text += QStringLiteral(";QSQLITE_OPEN_READONLY");
        }
        database.setConnectOptions(text);
        return;
    }
    const auto& server = std::get<PostgresServer>(place);
    checkSchemaName(server);
    database.setHostName(QString::fromStdString(server.host));
    database.setPort(server.port);
    database.setDatabaseName(QString::fromStdString(server.database));
    database.setUserName(QString::fromStdString(server.user));
    database.setPassword(QString::fromStdString(server.password));
}

} // namespace

StoreError engineError(const Dialect& dialect, const QSqlError& error, std::string_view sql)
{
    const std::string code = error.nativeErrorCode().toStdString();
    const StoreFault fault = dialect.faultOf(code);
    std::string detail = error.databaseText().simplified().toStdString();
    if (detail.empty()) {
        detail = error.driverText().simplified().toStdString();
    }
    if (!code.empty()) {
        detail += ", code " + code;
    }
    if (!sql.empty()) {
        detail += ", in: " + std::string(sql);
    }
    return engineError(fault, std::move(detail));
}

Connection::Connection(const StorePlace& place, const ConnectionOptions& options)
    : m_place(place),
      m_options(options),
      m_dialect(dialectOf(place)),
      m_impl(std::make_unique<Impl>())
{
    // Names of connections are shared by the whole process; this one is nobody else's while it
    // lives.
    m_impl->name = QStringLiteral("loadwarden-%1").arg(reinterpret_cast<quintptr>(m_impl.get()));
    if (!QSqlDatabase::isDriverAvailable(QLatin1String(m_dialect.driver()))) {
        throw StoreError(StoreFault::missing,
                         std::string("This computer lacks the driver ") + m_dialect.driver()
                             + " for the journal's database.",
                         std::string("Install the package ") + m_dialect.driverPackage() + '.');
    }
    m_impl->database = QSqlDatabase::addDatabase(QLatin1String(m_dialect.driver()), m_impl->name);
    try {
        describe(m_impl->database, m_place, m_options);
        watchSqlite();
        if (!m_impl->database.open()) {
            throw engineError(m_dialect, m_impl->database.lastError(), "");
        }
        m_impl->sqlite = sqliteHandle(m_impl->database);
        for (const Setting& setting :
             m_dialect.settings(m_place, m_options.access, m_options.syncing, m_options.patience)) {
            if (!setting.set.empty()) {
                say(setting.set);
            }
            if (setting.reads.empty()) {
                continue;
            }
            if (const std::string is = say(setting.reads); is != setting.expect) {
                const bool foreign = setting.reads == "PRAGMA application_id";
                throw engineError(foreign ? StoreFault::foreign : StoreFault::misuse,
                                  setting.reads + " is " + is + ", not " + setting.expect);
            }
        }
    } catch (...) {
        m_impl->database = QSqlDatabase();
        QSqlDatabase::removeDatabase(m_impl->name);
        throw;
    }
}

Connection::~Connection()
{
    m_impl->idle.clear();
    m_impl->database.close();
    m_impl->database = QSqlDatabase();
    QSqlDatabase::removeDatabase(m_impl->name);
}

std::string Connection::say(const std::string& sql)
{
    QSqlQuery query(m_impl->database);
    query.setForwardOnly(true);
    if (!query.exec(QString::fromStdString(sql))) {
        throw engineError(m_dialect, query.lastError(), sql);
    }
    std::string first;
    if (query.isSelect() && query.next()) {
        first = query.value(0).toString().toStdString();
    }
    if (query.lastError().isValid()) {
        throw engineError(m_dialect, query.lastError(), sql);
    }
    return first;
}

} // namespace loadwarden
