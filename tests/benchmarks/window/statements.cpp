#include "tests/benchmarks/window/statements.h"

#include <mutex>
#include <sqlite3.h>
#include <string_view>
#include <utility>

namespace loadwarden::benchmarks {
namespace {

std::mutex mutex;
std::map<std::string, std::int64_t> counted;

int count(unsigned /*what*/, void* /*context*/, void* /*statement*/, void* text)
{
    const auto* const sql = static_cast<const char*>(text);
    if (sql != nullptr && std::string_view(sql).substr(0, 2) != "--") { // else of a trigger
        const std::lock_guard guard(mutex);
        ++counted[sql];
    }
    return 0;
}

extern "C" int traceOpened(sqlite3* database, char** /*error*/, const void* /*routines*/)
{
    sqlite3_trace_v2(database, SQLITE_TRACE_STMT, count, nullptr);
    return SQLITE_OK;
}

} // namespace

void countStatements()
{
    sqlite3_auto_extension(reinterpret_cast<void (*)()>(&traceOpened));
}

std::map<std::string, std::int64_t> takeStatements()
{
    const std::lock_guard guard(mutex);
    return std::exchange(counted, {});
}

std::int64_t queriesIn(const std::map<std::string, std::int64_t>& statements)
{
    std::int64_t sum = 0;
    for (const auto& [sql, times] : statements) {
        sum += sql.starts_with("SELECT ") ? times : 0;
    }
    return sum;
}

} // namespace loadwarden::benchmarks
