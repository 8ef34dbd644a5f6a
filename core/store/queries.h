#pragma once

#include "core/store/dialect.h"

#include <span>
#include <string>
#include <string_view>

namespace loadwarden {

/// The queries by which the store finds things (queries.def). None of them may read a table that
/// grows with the journal from its beginning to its end; a test asks the engine for its plan.
enum class Query : std::uint8_t {
#define LW_QUERY(name, sql) name,
#include "core/store/queries.def"
#undef LW_QUERY
};

/// A query's text as the engine of that dialect takes it.
[[nodiscard]] const std::string& sqlOf(Query query, const Dialect& dialect);

struct NamedQuery {
    Query query{};
    std::string_view name;
};

/// The binds of a query for some values at once.
[[nodiscard]] std::span<const char* const> eachBinds();

/// All of them.
[[nodiscard]] std::span<const NamedQuery> namedQueries();

} // namespace loadwarden
