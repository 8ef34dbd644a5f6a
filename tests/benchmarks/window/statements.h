#pragma once

#include <cstdint>
#include <map>
#include <string>

namespace loadwarden::benchmarks {

/// Counts from now on every statement that SQLite runs in this process, whoever asks for it.
void countStatements();

/// How often each was run since the last call of this.
[[nodiscard]] std::map<std::string, std::int64_t> takeStatements();

/// Of those, the queries; what opens and ends a snapshot is none.
[[nodiscard]] std::int64_t queriesIn(const std::map<std::string, std::int64_t>& statements);

} // namespace loadwarden::benchmarks
