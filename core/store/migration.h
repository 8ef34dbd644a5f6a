#pragma once

#include "core/quantities/clock.h"
#include "core/store/connection.h"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What brings a database from one schema to the next (resources/store/README.md).
struct Migration {
    std::int64_t version = 0; ///< the schema that it ends with
    std::string_view sql;
};

/// The migrations of this program, from schema 1, without gaps.
[[nodiscard]] std::vector<Migration> migrations();

/// The schema of a database; 0 when it has no tables at all. Throws StoreFault::foreign when it has
/// tables, but not of this program.
[[nodiscard]] std::int64_t schemaOf(Connection& connection);

/// Brings the database to the last of the migrations, each in a transaction of its own. Throws
/// StoreFault::newer when it is already beyond.
void migrate(Connection& connection, std::span<const Migration> all, const Clock& clock);

/// Throws StoreFault::older or newer when the database is not at the last of the migrations: what
/// somebody asks who only reads.
void checkSchema(Connection& connection, std::span<const Migration> all);

/// The statements of a migration as the engine of that dialect takes them.
[[nodiscard]] std::vector<std::string> statementsOf(std::string_view sql, const Dialect& dialect);

} // namespace loadwarden
