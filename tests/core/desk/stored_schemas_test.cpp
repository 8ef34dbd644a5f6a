#include "core/desk/upkeep.h"
#include "core/store/migration.h"
#include "core/store/verify.h"
#include "tests/core/desk/desk_support.h"

#include <gmock/gmock.h>

#include <fstream>
#include <sqlite3.h>
#include <sstream>

// Journals as each schema had them (tests/data/store/README.md) open for ever.

namespace loadwarden::testing {
namespace {

namespace fs = std::filesystem;

fs::path folderOfFixtures()
{
    return fs::path(LOADWARDEN_SOURCE_DIR) / "tests" / "data" / "store";
}

void makeFile(const fs::path& sql, const fs::path& file)
{
    std::ifstream in(sql, std::ios::binary);
    std::ostringstream text;
    text << in.rdbuf();
    sqlite3* database = nullptr;
    ASSERT_EQ(sqlite3_open(file.c_str(), &database), SQLITE_OK);
    char* message = nullptr;
    const int done = sqlite3_exec(database, text.str().c_str(), nullptr, nullptr, &message);
    EXPECT_EQ(done, SQLITE_OK) << sql << ": " << (message == nullptr ? "" : message);
    sqlite3_free(message);
    sqlite3_close(database);
}

class AStoredSchema : public ::testing::TestWithParam<std::int64_t> {
protected:
    [[nodiscard]] fs::path sql() const
    {
        return folderOfFixtures() / ("schema-" + std::to_string(GetParam()) + ".sql");
    }
};

std::vector<std::int64_t> everySchema()
{
    std::vector<std::int64_t> versions;
    for (const Migration& migration : migrations()) {
        versions.push_back(migration.version);
    }
    return versions;
}

INSTANTIATE_TEST_SUITE_P(Desk, AStoredSchema, ::testing::ValuesIn(everySchema()),
                         [](const auto& schema) {
                             return "schema" + std::to_string(schema.param);
                         });

TEST_P(AStoredSchema, IsOpenedBroughtForwardAndVerified)
{
    ASSERT_TRUE(fs::exists(sql())) << "a schema without a journal that has it";
    const TempFolder folder;
    const fs::path file = folder / "stored.journal";
    makeFile(sql(), file);
    FixedClock clock(local("12:00", "2031-03-05"));
    CountingIdSource ids;
    const Workplace place{.clock = clock,
                          .ids = ids,
                          .workstation = "ws-1",
                          .keep = folder / "keep",
                          .syncing = Syncing::off,
                          .pinCost = PinCost::least()};
    std::int64_t entries = 0;
    {
        Connection connection(SqliteFile{file}, {.access = Access::read});
        EXPECT_EQ(schemaOf(connection), GetParam());
    }
    {
        Office office(file, Access::write, place);
        EXPECT_EQ(schemaOf(office.connection()), migrations().back().version);
        NoProgress progress;
        const VerifyReport report = verifyJournal(office.connection(), {}, progress);
        EXPECT_TRUE(report.sound())
            << (report.faults.empty() ? "" : sentenceOf(report.faults.front()));
        EXPECT_GE(report.sealsHeld, 1);
        entries = report.entries;
        EXPECT_GT(entries, 30);
        // Its load is found, and decided as it was: that morning no Bowie-Dick test was run.
        ReadSnapshot snapshot(office.connection());
        const auto cycle = findCycle(snapshot, "1-2031-063-01");
        ASSERT_TRUE(cycle);
        const auto view = viewCycle(snapshot, office.entries(), *cycle, clock.now());
        ASSERT_TRUE(view);
        EXPECT_EQ(view->folded.phase, Phase::awaitingDecision);
        EXPECT_EQ(view->decision.verdict, Verdict::reprocess) << sightOf(*view);
        EXPECT_EQ(view->folded.record.load.items.size(), 1U);
    }
    NoProgress progress;
    const RebuildReport tables = compareTables(file, progress);
    EXPECT_EQ(tables.entries, entries);
    for (const IndexDifference& each : tables.differences) {
        // PINs came with schema 3; before, there were none to keep.
        EXPECT_TRUE(GetParam() < 3 && each.table == "s_pin" && each.missing)
            << each.table << ' ' << each.row;
    }
}

} // namespace
} // namespace loadwarden::testing
