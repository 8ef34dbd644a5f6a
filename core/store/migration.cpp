#include "core/store/migration.h"

#include "core/store/migration_files.h"
#include "core/store/read_snapshot.h"
#include "core/store/write_transaction.h"

#include <algorithm>
#include <charconv>

namespace loadwarden {
namespace {

StoreError newerSchema(std::int64_t is, std::int64_t known)
{
    return {StoreFault::newer,
            "The journal has schema " + std::to_string(is)
                + ", written by a newer version of Loadwarden; this version knows schemas up to "
                + std::to_string(known) + '.',
            "Open it with the newer version. Nothing was changed."};
}

/// Works with a ReadSnapshot and with a WriteTransaction.
template <class Scope>
std::int64_t schemaIn(Scope& scope)
{
    Statement named = scope.statement(scope.dialect().countTablesNamed());
    named.bind(":name", "s_schema");
    if (named.step() && named.integer(0) == 1) {
        Statement version = scope.statement("SELECT MAX(version) FROM s_schema");
        return version.step() ? version.integer(0) : 0;
    }
    Statement all = scope.statement(scope.dialect().countTables());
    if (all.step() && all.integer(0) > 0) {
        throw engineError(StoreFault::foreign, "there is no table s_schema");
    }
    return 0;
}

void apply(Connection& connection, const Migration& migration, Instant now)
{
    WriteTransaction transaction(connection);
    // Asked again inside: another process may have been here first.
    if (schemaIn(transaction) >= migration.version) {
        return;
    }
    for (const std::string& sql : statementsOf(migration.sql, transaction.dialect())) {
        transaction.define(sql);
    }
    transaction.statement("INSERT INTO s_schema (version, applied_at) VALUES (:version, :at)")
        .bind(":version", migration.version)
        .bind(":at", now.ms)
        .run();
    transaction.commit();
}

} // namespace

std::vector<Migration> migrations()
{
    std::vector<Migration> all;
    for (const EmbeddedFile& file : embedded::migrations()) {
        Migration& migration = all.emplace_back(Migration{0, file.text});
        std::from_chars(file.name.data(), file.name.data() + file.name.size(), migration.version);
    }
    std::ranges::sort(all, {}, &Migration::version);
    return all;
}

std::int64_t schemaOf(Connection& connection)
{
    ReadSnapshot snapshot(connection);
    return schemaIn(snapshot);
}

void migrate(Connection& connection, std::span<const Migration> all, const Clock& clock)
{
    const std::int64_t is = schemaOf(connection);
    const std::int64_t known = all.empty() ? 0 : all.back().version;
    if (is > known) {
        throw newerSchema(is, known);
    }
    for (const Migration& migration : all) {
        if (migration.version > is) {
            apply(connection, migration, clock.now());
        }
    }
}

void checkSchema(Connection& connection, std::span<const Migration> all)
{
    const std::int64_t is = schemaOf(connection);
    const std::int64_t known = all.empty() ? 0 : all.back().version;
    if (is > known) {
        throw newerSchema(is, known);
    }
    if (is < known) {
        throw engineError(StoreFault::older,
                          "schema " + std::to_string(is) + ", not " + std::to_string(known));
    }
}

std::vector<std::string> statementsOf(std::string_view sql, const Dialect& dialect)
{
    constexpr std::string_view appendOnly = "-- append_only: ";
    std::vector<std::string> statements;
    std::string current;
    while (!sql.empty()) {
        const std::size_t end = std::min(sql.find('\n'), sql.size());
        const std::string_view line = sql.substr(0, end);
        sql.remove_prefix(std::min(end + 1, sql.size()));
        if (line.starts_with(appendOnly)) {
            for (std::string& trigger : dialect.appendOnly(line.substr(appendOnly.size()))) {
                statements.push_back(std::move(trigger));
            }
            continue;
        }
        if (line.empty() || line.starts_with("--")) {
            continue;
        }
        current += line;
        if (line.ends_with(';')) {
            current.pop_back();
            statements.push_back(dialect.translated(std::move(current)));
            current.clear();
        } else {
            current += '\n';
        }
    }
    return statements;
}

} // namespace loadwarden
