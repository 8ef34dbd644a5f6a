#include "tests/benchmarks/long_journal.h"

#include "core/store/connection.h"
#include "core/store/journal_reader.h"
#include "core/store/migration.h"
#include "tests/benchmarks/load_writer.h"

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <sqlite3.h>

namespace loadwarden::benchmarks {
namespace {

std::int64_t newestOf(const std::filesystem::path& file)
{
    Connection connection(SqliteFile{file}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    return JournalReader(snapshot).head().seq;
}

std::filesystem::path folder()
{
    const char* const asked = std::getenv("LOADWARDEN_BENCHMARK_FILES");
    return asked == nullptr ? LOADWARDEN_BENCHMARK_FOLDER : asked;
}

/// Makes a file by `write` where it is not there yet. One that was left unfinished is made anew.
void makeOnce(const std::filesystem::path& file,
              const std::function<void(const std::filesystem::path&)>& write)
{
    if (std::filesystem::exists(file)) {
        return;
    }
    std::filesystem::path unfinished = file;
    unfinished += ".unfinished";
    for (const char* end : {"", "-wal", "-shm"}) {
        std::filesystem::path each = unfinished;
        each += end;
        std::filesystem::remove(each);
    }
    write(unfinished);
    std::filesystem::rename(unfinished, file);
}

void writeLoads(const std::filesystem::path& file, std::int64_t loads)
{
    using Clock = std::chrono::steady_clock;
    const auto begun = Clock::now();
    LoadWriter writing(file);
    const std::int64_t step = std::max<std::int64_t>(loads / 100, 1);
    for (std::int64_t number = 0; number < loads; ++number) {
        writing.load(number);
        if ((number + 1) % step == 0) {
            const std::chrono::duration<double> taken = Clock::now() - begun;
            std::fprintf(stderr, "\rwriting loads: %lld of %lld, %.0f s",
                         static_cast<long long>(number + 1), static_cast<long long>(loads),
                         taken.count());
        }
    }
    writeLastDay(writing, loads);
    writing.finish();
    std::fputc('\n', stderr);
}

LongJournal made()
{
    const char* const asked = std::getenv("LOADWARDEN_LOADS");
    LongJournal journal;
    journal.loads = asked == nullptr ? 200'000 : std::atoll(asked);
    journal.now = momentOfDay(dayAfter(journal.loads), 13 * 60);
    // The number belongs to what is written: another generator writes another file.
    journal.file = folder() / ("journal-3-" + std::to_string(journal.loads) + ".lw");
    makeOnce(journal.file, [&](const auto& file) { writeLoads(file, journal.loads); });
    journal.entries = newestOf(journal.file);
    const auto bytes = static_cast<std::int64_t>(std::filesystem::file_size(journal.file));
    std::printf("%lld loads, %lld entries, %lld MB, %lld bytes a load\n",
                static_cast<long long>(journal.loads), static_cast<long long>(journal.entries),
                static_cast<long long>(bytes / 1'000'000),
                static_cast<long long>(bytes / journal.loads));
    return journal;
}

} // namespace

const LongJournal& longJournal()
{
    static const LongJournal journal = made();
    return journal;
}

const std::filesystem::path& searchTables()
{
    static const std::filesystem::path file = [] {
        std::filesystem::path made = folder() / "search-1-2000000.lw";
        makeOnce(made, [](const auto& unfinished) {
            {
                Connection connection(SqliteFile{unfinished},
                                      {.access = Access::create, .syncing = Syncing::off});
                migrate(connection, migrations(), FixedClock(Instant{}));
            }
            std::fprintf(stderr, "filling the tables of %d loads for searching\n", searchedLoads);
            sqlite3* database = nullptr;
            std::string sql = "PRAGMA synchronous = OFF; BEGIN; WITH RECURSIVE n(i) AS (SELECT 0 "
                              "UNION ALL SELECT i + 1 FROM n WHERE i < {loads} - 1) INSERT INTO "
                              "p_cycle_lot SELECT printf('%d-%09d', i % 10 + 1, i), 'ld-' || i, i "
                              "FROM n ORDER BY 1; WITH RECURSIVE n(i) AS (SELECT 0 UNION ALL "
                              "SELECT i + 1 FROM n WHERE i < {loads} * 12 - 1) INSERT INTO p_label "
                              "SELECT printf('set%d/%d', i % 997, i), 'it-' || i, 'ld-' || i / 12, "
                              "printf('Set %d/%d', i % 997, i), i FROM n ORDER BY 1; COMMIT";
            const std::string place = "{loads}";
            for (auto at = sql.find(place); at != std::string::npos; at = sql.find(place)) {
                sql.replace(at, place.size(), std::to_string(searchedLoads));
            }
            char* fault = nullptr;
            if (sqlite3_open(unfinished.c_str(), &database) != SQLITE_OK
                || sqlite3_exec(database, sql.c_str(), nullptr, nullptr, &fault) != SQLITE_OK) {
                std::fprintf(stderr, "%s\n", fault == nullptr ? "cannot open it" : fault);
                std::exit(1);
            }
            sqlite3_close(database);
        });
        return made;
    }();
    return file;
}

} // namespace loadwarden::benchmarks
