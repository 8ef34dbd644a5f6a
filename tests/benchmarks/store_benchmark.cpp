// What it costs to find and to read in a long journal. The times asked for stand beside each.
#include "core/acts/fold/evidence_fold.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "core/store/act_entry.h"
#include "core/store/finder.h"
#include "core/store/migration.h"
#include "core/store/reach/reach_reader.h"
#include "core/store/rebuild.h"
#include "core/store/verify.h"
#include "tests/benchmarks/long_journal.h"
#include "tests/core/store/bulk_writer.h"

#include <benchmark/benchmark.h>

#include <QCoreApplication>
#include <QSqlDatabase>
#include <QSqlDriver>
#include <QVariant>

#include <random>
#include <sqlite3.h>

namespace loadwarden {
namespace {

using benchmarks::loadId;
using benchmarks::loadsADay;
using benchmarks::longJournal;

void decideOne(ReachReader& reader, const std::string& cycle, std::size_t& entries)
{
    const std::vector<const Entry*> part = reader.entriesFor(cycle);
    entries += part.size();
    const FoldedEvidence folded = foldEvidence(part, cycle);
    benchmark::DoNotOptimize(
        decide(assemble(folded.record), {}, part.back()->recordedAt.at + Duration::minutes(60)));
}

/// Asked: 5 ms. Nothing has been read before, but for what the engine keeps.
void openLoad(benchmark::State& state)
{
    Connection connection(SqliteFile{longJournal().file}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    std::mt19937_64 random(1);
    std::size_t entries = 0;
    for (auto _ : state) {
        EntryCache cache;
        ReachReader reader(snapshot, cache);
        decideOne(reader,
                  loadId(static_cast<std::int64_t>(
                      random() % static_cast<std::uint64_t>(longJournal().loads))),
                  entries);
    }
    state.counters["entries"] =
        benchmark::Counter(static_cast<double>(entries), benchmark::Counter::kAvgIterations);
}
BENCHMARK(openLoad)->Unit(benchmark::kMillisecond);

/// Only the load's own entries, as its history shows them.
void openHistory(benchmark::State& state)
{
    Connection connection(SqliteFile{longJournal().file}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    std::mt19937_64 random(1);
    for (auto _ : state) {
        JournalReader reader(snapshot);
        EntryCursor cursor = reader.about(loadId(
            static_cast<std::int64_t>(random() % static_cast<std::uint64_t>(longJournal().loads))));
        while (const auto entry = cursor.next()) {
            benchmark::DoNotOptimize(understand(entry->bytes, entry->hash));
        }
    }
}
BENCHMARK(openHistory)->Unit(benchmark::kMillisecond);

/// Asked: 50 ms for the 100 loads of a day, of the newest whole one.
void dayOfLoads(benchmark::State& state)
{
    Connection connection(SqliteFile{longJournal().file}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    const std::int64_t first = longJournal().loads / loadsADay * loadsADay - loadsADay;
    std::size_t entries = 0;
    EntryCache kept;
    for (auto _ : state) {
        EntryCache cold;
        ReachReader reader(snapshot, state.range(0) != 0 ? kept : cold);
        for (std::int64_t i = 0; i < loadsADay; ++i) {
            decideOne(reader, loadId(first + i), entries);
        }
    }
    state.counters["entries"] =
        benchmark::Counter(static_cast<double>(entries), benchmark::Counter::kAvgIterations);
}
BENCHMARK(dayOfLoads)->ArgName("kept")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

/// A journal's file to search in: the long journal, or the tables alone of ten times as many loads.
const std::filesystem::path& searched(const benchmark::State& state)
{
    return state.range(0) != 0 ? benchmarks::searchTables() : longJournal().file;
}

/// Asked: 10 ms for 50 rows.
void lotSearch(benchmark::State& state)
{
    Connection connection(SqliteFile{searched(state)}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    std::size_t rows = 0;
    for (auto _ : state) {
        rows = Finder(snapshot).lotsFrom("3-", 50).size();
    }
    state.counters["rows"] = static_cast<double>(rows);
}
BENCHMARK(lotSearch)->ArgName("tables")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

/// Asked: 10 ms for 50 rows.
void labelSearch(benchmark::State& state)
{
    Connection connection(SqliteFile{searched(state)}, {.access = Access::read});
    ReadSnapshot snapshot(connection);
    std::size_t rows = 0;
    for (auto _ : state) {
        rows = Finder(snapshot).labelsFrom("Set 12", 50).size();
    }
    state.counters["rows"] = static_cast<double>(rows);
}
BENCHMARK(labelSearch)->ArgName("tables")->Arg(0)->Arg(1)->Unit(benchmark::kMicrosecond);

/// Asked: 400,000 entries a second, without the engine's own check of its pages; with it, what the
/// whole verification takes.
void verify(benchmark::State& state)
{
    Connection connection(SqliteFile{longJournal().file}, {.access = Access::read});
    for (auto _ : state) {
        NoProgress progress;
        const VerifyReport report =
            verifyJournal(connection, {.pages = state.range(0) != 0}, progress);
        if (!report.sound()) {
            state.SkipWithError("the journal is not sound");
        }
    }
    state.SetItemsProcessed(state.iterations() * longJournal().entries);
}
BENCHMARK(verify)
    ->ArgName("pages")
    ->Arg(0)
    ->Arg(1)
    ->UseRealTime()
    ->Unit(benchmark::kMillisecond)
    ->Iterations(1);

/// Asked: 40,000 entries a second.
void rebuild(benchmark::State& state)
{
    for (auto _ : state) {
        Connection connection(SqliteFile{longJournal().file}, {.syncing = Syncing::off});
        NoProgress progress;
        const RebuildReport report = rebuildIndexes(connection, {}, Rebuild::compare, progress);
        if (report.differenceCount != 0) {
            state.SkipWithError("the indexes differ from the entries");
        }
    }
    state.SetItemsProcessed(state.iterations() * longJournal().entries);
}
BENCHMARK(rebuild)->Unit(benchmark::kMillisecond)->Iterations(1);

std::int64_t statementsOfAct = 0;

int countStatement(unsigned /*what*/, void* /*context*/, void* /*statement*/, void* /*text*/)
{
    ++statementsOfAct;
    return 0;
}

/// Asked: 150 µs, at most 12 statements, without syncing. In a copy of its own of a short journal,
/// as the file is kept; the tables are trees, whose depth hardly depends on their length.
void oneAct(benchmark::State& state)
{
    const auto file = std::filesystem::temp_directory_path()
                      / ("loadwarden-act-" + std::to_string(QCoreApplication::applicationPid()));
    {
        loadwarden::testing::BulkWriter writer(SqliteFile{file}, Instant{1'930'000'000'000}, 1);
        const QSqlDatabase database =
            QSqlDatabase::database(QSqlDatabase::connectionNames().last(), false);
        auto* const handle = *static_cast<sqlite3* const*>(database.driver()->handle().constData());
        sqlite3_trace_v2(handle, SQLITE_TRACE_STMT, countStatement, nullptr);
        loadwarden::testing::TimedDraft act;
        act.recordedAt = Instant{1'930'000'000'000};
        act.draft.happenedAt = {act.recordedAt, 0};
        act.draft.actor = "st-a";
        act.draft.role = "operator";
        act.draft.workstation = "ws-1";
        act.draft.kind = "chemical.read";
        act.draft.body = R"({"seen":"end-colour-reached"})";
        std::int64_t number = 0;
        statementsOfAct = 0;
        for (auto _ : state) {
            ++number;
            act.draft.subjects = {"ci-" + std::to_string(number),
                                  "ld-" + std::to_string(number / 30)};
            act.draft.unchanged = act.draft.subjects;
            act.draft.basedOn = writer.newest();
            writer.add(act);
        }
        state.counters["statements"] = benchmark::Counter(static_cast<double>(statementsOfAct),
                                                          benchmark::Counter::kAvgIterations);
        sqlite3_trace_v2(handle, 0, nullptr, nullptr);
    }
    for (const char* end : {"", "-wal", "-shm"}) {
        std::filesystem::path each = file;
        each += end;
        std::filesystem::remove(each);
    }
}
BENCHMARK(oneAct)->Unit(benchmark::kMicrosecond);

} // namespace
} // namespace loadwarden

int main(int argc, char** argv)
{
    const QCoreApplication application(argc, argv);
    benchmark::Initialize(&argc, argv);
    benchmark::RunSpecifiedBenchmarks();
    benchmark::Shutdown();
    return 0;
}
