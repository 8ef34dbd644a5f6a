#include "core/store/dialect.h"

#include <charconv>

namespace loadwarden {
namespace {

/// "LWjn" in the header of the file, so that another program's database is known as such.
constexpr std::string_view applicationId = "1280797294";

void replaceAll(std::string& text, std::string_view what, std::string_view with)
{
    for (auto at = text.find(what); at != std::string::npos;
         at = text.find(what, at + with.size())) {
        text.replace(at, what.size(), with);
    }
}

std::vector<Setting> sqliteSettings(Access access, Syncing syncing,
                                    std::chrono::milliseconds patience)
{
    const std::string wait = std::to_string(patience.count());
    std::vector<Setting> settings{
        {"PRAGMA busy_timeout = " + wait, "PRAGMA busy_timeout", wait},
        {"PRAGMA foreign_keys = ON", "PRAGMA foreign_keys", "1"},
        // Else INSERT OR REPLACE would delete a row without its trigger.
        {"PRAGMA recursive_triggers = ON", "PRAGMA recursive_triggers", "1"},
        {"PRAGMA trusted_schema = OFF", "PRAGMA trusted_schema", "0"},
        {"PRAGMA cell_size_check = ON", "PRAGMA cell_size_check", "1"},
        // 64 MiB: the inner pages of a long journal's trees, and more while indexes are filled
        // anew.
        {"PRAGMA cache_size = -65536", "PRAGMA cache_size", "-65536"},
    };
    if (access == Access::create) {
        settings.push_back({"PRAGMA application_id = " + std::string(applicationId), "", ""});
    }
    settings.push_back({"", "PRAGMA application_id", std::string(applicationId)});
    if (access == Access::read) {
        settings.push_back({"PRAGMA query_only = ON", "PRAGMA query_only", "1"});
        return settings;
    }
    settings.push_back({"PRAGMA journal_mode = WAL", "PRAGMA journal_mode", "wal"});
    const bool full = syncing == Syncing::full;
    settings.push_back({full ? "PRAGMA synchronous = FULL" : "PRAGMA synchronous = OFF",
                        "PRAGMA synchronous", full ? "2" : "0"});
    return settings;
}

std::vector<Setting> postgresSettings(const PostgresServer& server, Access access, Syncing syncing,
                                      std::chrono::milliseconds patience)
{
    const std::string wait = std::to_string(patience.count()) + "ms";
    std::vector<Setting> settings;
    if (access == Access::create) {
        settings.push_back({"CREATE SCHEMA IF NOT EXISTS " + server.schema, "", ""});
    }
    settings.push_back(
        {"SET search_path TO " + server.schema, "SELECT current_schema()", server.schema});
    settings.push_back({"SET lock_timeout = '" + wait + "'", "", ""});
    settings.push_back({"SET client_encoding = 'UTF8'", "SHOW client_encoding", "UTF8"});
    settings.push_back({"", "SHOW server_encoding", "UTF8"});
    if (access == Access::read) {
        settings.push_back(
            {"SET default_transaction_read_only = on", "SHOW default_transaction_read_only", "on"});
        return settings;
    }
    const char* commit = syncing == Syncing::full ? "on" : "off";
    settings.push_back(
        {std::string("SET synchronous_commit = ") + commit, "SHOW synchronous_commit", commit});
    return settings;
}

StoreFault sqliteFault(std::string_view code)
{
    int extended = 0;
    std::from_chars(code.data(), code.data() + code.size(), extended);
    // https://www.sqlite.org/rescode.html; the low byte is the primary code.
    switch (extended) {
    case 3338: return StoreFault::denied;   // SQLITE_IOERR_ACCESS
    case 782: return StoreFault::denied;    // SQLITE_CANTOPEN_FULLPATH
    case 8458: return StoreFault::device;   // SQLITE_IOERR_CORRUPTFS
    case 522: return StoreFault::damaged;   // SQLITE_IOERR_SHORT_READ
    case 1032: return StoreFault::readOnly; // SQLITE_READONLY_DBMOVED
    default: break;
    }
    switch (extended & 0xFF) {
    case 5:                               // SQLITE_BUSY
    case 6: return StoreFault::busy;      // SQLITE_LOCKED
    case 3: return StoreFault::denied;    // SQLITE_PERM
    case 23: return StoreFault::denied;   // SQLITE_AUTH
    case 8: return StoreFault::readOnly;  // SQLITE_READONLY
    case 10: return StoreFault::device;   // SQLITE_IOERR
    case 11: return StoreFault::damaged;  // SQLITE_CORRUPT
    case 26: return StoreFault::foreign;  // SQLITE_NOTADB
    case 13: return StoreFault::full;     // SQLITE_FULL
    case 14: return StoreFault::readOnly; // SQLITE_CANTOPEN
    case 19: return StoreFault::refused;  // SQLITE_CONSTRAINT
    default: return StoreFault::misuse;
    }
}

StoreFault postgresFault(std::string_view code)
{
    // PostgreSQL 15 documentation, appendix A; the first two characters are the class.
    if (code == "53100") {
        return StoreFault::full;
    }
    if (code == "25006") {
        return StoreFault::readOnly;
    }
    if (code == "42501") {
        return StoreFault::denied;
    }
    if (code == "55P03" || code == "57014" || code.starts_with("40")) {
        return StoreFault::busy;
    }
    if (code == "58030") {
        return StoreFault::device;
    }
    if (code.starts_with("23") || code == "P0001") {
        return StoreFault::refused;
    }
    if (code.starts_with("28") || code == "3D000") {
        return StoreFault::denied;
    }
    if (code.starts_with("XX")) {
        return StoreFault::damaged;
    }
    if (code.empty() || code.starts_with("08") || code.starts_with("57")
        || code.starts_with("53")) {
        return StoreFault::unreachable;
    }
    return StoreFault::misuse;
}

} // namespace

const char* Dialect::driver() const
{
    return m_engine == Engine::sqlite ? "QSQLITE" : "QPSQL";
}

const char* Dialect::driverPackage() const
{
    return m_engine == Engine::sqlite ? "libqt6sql6-sqlite" : "libqt6sql6-psql";
}

std::vector<Setting> Dialect::settings(const StorePlace& place, Access access, Syncing syncing,
                                       std::chrono::milliseconds patience) const
{
    const auto* const server = std::get_if<PostgresServer>(&place);
    return server == nullptr ? sqliteSettings(access, syncing, patience)
                             : postgresSettings(*server, access, syncing, patience);
}

std::vector<std::string> Dialect::beginWrite() const
{
    if (m_engine == Engine::sqlite) {
        return {"BEGIN IMMEDIATE"};
    }
    // One lock for all writers of the schema, which needs no table and so serves migrations too. It
    // is taken by a statement of its own: the next one then sees what the writer before has
    // committed.
    return {"BEGIN ISOLATION LEVEL READ COMMITTED READ WRITE",
            "SELECT pg_advisory_xact_lock(hashtext('loadwarden ' || current_schema()))"};
}

std::vector<std::string> Dialect::beginRead() const
{
    if (m_engine == Engine::sqlite) {
        // The first reading fixes what is seen.
        return {"BEGIN DEFERRED", "SELECT count(*) FROM sqlite_schema"};
    }
    return {"BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY", "SELECT 1"};
}

std::string Dialect::countTables() const
{
    return m_engine == Engine::sqlite
               ? "SELECT count(*) FROM sqlite_schema WHERE type = 'table'"
               : "SELECT count(*) FROM pg_tables WHERE schemaname = current_schema()";
}

std::string Dialect::countTablesNamed() const
{
    return countTables() + (m_engine == Engine::sqlite ? " AND name" : " AND tablename")
           + " = :name";
}

std::string Dialect::bytesOf(std::string_view expression) const
{
    const std::string inner(expression);
    return m_engine == Engine::sqlite ? "CAST(" + inner + " AS BLOB)"
                                      : "convert_to(" + inner + ", 'UTF8')";
}

std::string Dialect::textOf(std::string_view bind) const
{
    const std::string inner(bind);
    return m_engine == Engine::sqlite ? "CAST(" + inner + " AS TEXT)"
                                      : "convert_from(" + inner + ", 'UTF8')";
}

std::string Dialect::translated(std::string statement) const
{
    const bool sqlite = m_engine == Engine::sqlite;
    replaceAll(statement, "/*rows*/", sqlite ? "STRICT" : "");
    replaceAll(statement, "/*clustered*/", sqlite ? "STRICT, WITHOUT ROWID" : "");
    // SQLite compares texts by their bytes unless told otherwise; PostgreSQL by the database's
    // locale.
    replaceAll(statement, " /*bytes*/", sqlite ? "" : " COLLATE \"C\"");
    if (sqlite) {
        // A strict table knows INTEGER only, which has 64 bits here, and INTEGER PRIMARY KEY is the
        // row's own number.
        replaceAll(statement, "BIGINT", "INTEGER");
    } else {
        replaceAll(statement, " BLOB", " BYTEA");
    }
    return statement;
}

std::vector<std::string> Dialect::guards(std::string_view table) const
{
    const std::string name(table);
    return m_engine == Engine::sqlite ? std::vector{name + "_no_update", name + "_no_delete"}
                                      : std::vector{name + "_no_change", name + "_no_truncate"};
}

std::vector<std::string> Dialect::appendOnly(std::string_view table) const
{
    const std::string name(table);
    const auto triggers = guards(table);
    if (m_engine == Engine::sqlite) {
        const std::string refuse =
            " ON " + name + " BEGIN SELECT RAISE(ABORT, '" + name + " only grows'); END";
        return {"CREATE TRIGGER " + triggers[0] + " BEFORE UPDATE" + refuse,
                "CREATE TRIGGER " + triggers[1] + " BEFORE DELETE" + refuse};
    }
    const std::string refuse = " EXECUTE FUNCTION " + name + "_refuse()";
    return {"CREATE FUNCTION " + name
                + "_refuse() RETURNS trigger LANGUAGE plpgsql AS $$BEGIN RAISE EXCEPTION '" + name
                + " only grows'; END$$",
            "CREATE TRIGGER " + triggers[0] + " BEFORE UPDATE OR DELETE ON " + name
                + " FOR EACH ROW" + refuse,
            "CREATE TRIGGER " + triggers[1] + " BEFORE TRUNCATE ON " + name + " FOR EACH STATEMENT"
                + refuse};
}

std::string Dialect::countGuards() const
{
    if (m_engine == Engine::sqlite) {
        // The whole text, since a trigger of the same name could do nothing.
        return "SELECT count(*) FROM sqlite_schema WHERE type = 'trigger' AND tbl_name = :table "
               "AND sql LIKE '% ON ' || tbl_name || ' BEGIN SELECT RAISE(ABORT, ''' || tbl_name "
               "|| ' only grows''); END'";
    }
    return "SELECT count(*) FROM pg_trigger WHERE tgrelid = to_regclass(:table) AND tgenabled = "
           "'O' "
           "AND tgfoid = to_regproc(:table || '_refuse')";
}

std::string Dialect::checkPages() const
{
    return m_engine == Engine::sqlite ? "SELECT integrity_check FROM pragma_integrity_check(100)"
                                      : "";
}

StoreFault Dialect::faultOf(std::string_view code) const
{
    return m_engine == Engine::sqlite ? sqliteFault(code) : postgresFault(code);
}

} // namespace loadwarden
