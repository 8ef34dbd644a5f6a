#include "core/store/finder.h"
#include "tests/core/store/reach/stored_weeks.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

namespace loadwarden {
namespace {

using loadwarden::testing::BulkWriter;
using loadwarden::testing::draftOf;
using loadwarden::tests::at;
using loadwarden::tests::Journal;
using loadwarden::tests::leadC;
using loadwarden::tests::operatorA;
using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(ABeginning, EndsBehindAllThatBeginSo)
{
    EXPECT_EQ(behindAllFrom("3-2031"), "3-2032");
    EXPECT_EQ(behindAllFrom("a\x7F"), "a\xC2\x80");
    EXPECT_EQ(behindAllFrom("\xC3\xBF"), "\xC4\x80");         // U+00FF, U+0100
    EXPECT_EQ(behindAllFrom("\xED\x9F\xBF"), "\xEE\x80\x80"); // before and behind the surrogates
    EXPECT_EQ(behindAllFrom("\xEF\xBF\xBF"), "\xF0\x90\x80\x80");
    EXPECT_EQ(behindAllFrom("b\xF4\x8F\xBF\xBF"), "c");
    EXPECT_EQ(behindAllFrom("\xF4\x8F\xBF\xBF"), "");
    EXPECT_EQ(behindAllFrom(""), "");
}

class AFinder : public loadwarden::testing::OnBothEngines {
protected:
    void fill(const Journal& journal)
    {
        m_writer = std::make_unique<BulkWriter>(place(), at(4, 0), 100);
        write(*m_writer, journal.entries());
        m_snapshot = std::make_unique<ReadSnapshot>(m_writer->connection());
    }
    Finder finder() { return Finder(*m_snapshot); }

    std::int64_t count(const std::string& sql)
    {
        Statement row = m_snapshot->statement(sql);
        return row.step() ? row.integer(0) : 0;
    }

    std::vector<std::string> labels(std::string_view beginning, std::int64_t most = 50)
    {
        std::vector<std::string> said;
        for (const FoundLabel& each : finder().labelsFrom(beginning, most)) {
            said.push_back(each.label);
        }
        return said;
    }

private:
    std::unique_ptr<BulkWriter> m_writer;
    std::unique_ptr<ReadSnapshot> m_snapshot;
};

INSTANTIATE_TEST_SUITE_P(Store, AFinder, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(AFinder, SearchesByBytesOnEveryEngine)
{
    Journal journal = tests::morning();
    journal.add(operatorA, at(7, 0), {"ld-1", "sz-1"}, CycleReserved{.lot = "S-1"});
    int number = 0;
    // Among them what a locale would sort elsewhere, and signs that LIKE takes for any.
    for (const char* label : {"Set 1", "set1b", "SET-2", "s%t", "s_t", "s\xC3\xA9t", "St", "s",
                              "\xC3\xA9", "z", "sa\xF0\x9F\x98\x80"}) {
        journal.add(operatorA, at(7, 0), {"it-" + std::to_string(++number), "ld-1"},
                    ItemAdded{.label = label});
    }
    fill(journal);
    EXPECT_THAT(labels("se"), ElementsAre("SET-2", "Set 1", "set1b"));
    EXPECT_THAT(labels("S E T"), ElementsAre("SET-2", "Set 1", "set1b"));
    EXPECT_THAT(labels("s%"), ElementsAre("s%t"));
    EXPECT_THAT(labels("s_"), ElementsAre("s_t"));
    EXPECT_THAT(labels("s\xC3\xA9"), ElementsAre("s\xC3\xA9t"));
    EXPECT_THAT(labels("\xC3\xA9"), ElementsAre("\xC3\xA9"));
    EXPECT_THAT(labels("sa"), ElementsAre("sa\xF0\x9F\x98\x80"));
    EXPECT_THAT(labels("s", 3), ElementsAre("s", "s%t", "s_t"));
    EXPECT_EQ(labels("").size(), 11U);
    EXPECT_THAT(labels("q"), IsEmpty());
}

TEST_P(AFinder, ComparesByBytesWhateverTheLocaleOfTheServer)
{
    if (GetParam() != Dialect::Engine::postgres) {
        return; // SQLite compares by bytes unless told otherwise.
    }
    fill(tests::morning());
    const std::string columns =
        "SELECT count(*) FROM information_schema.columns WHERE table_schema "
        "= current_schema() AND column_name IN ('label', 'lot', 'cycle') "
        "AND table_name LIKE 'p_%' AND ";
    EXPECT_EQ(count(columns + "collation_name = 'C'"), count(columns + "data_type = 'text'"));
    EXPECT_GE(count(columns + "collation_name = 'C'"), 8);
}

TEST_P(AFinder, FindsWhatWasEverSaid)
{
    Journal journal = tests::releasable();
    const std::int64_t reserved = journal.seqOf<CycleReserved>("ld-1");
    journal.correct(leadC, at(8, 50), reserved, CycleReserved{.lot = "M1"});
    journal.add(operatorA, at(8, 50), {"ld-2", "sz-1", "sp-1"}, CycleReserved{.lot = "L2"});
    journal.add(operatorA, at(8, 55), {"it-1", "ld-1", "ld-2"}, ItemMoved{"ld-1", "ld-2", "again"});
    fill(journal);
    std::vector<std::string> lots;
    for (const FoundLot& each : finder().lotsFrom("L", 50)) {
        lots.push_back(each.lot + ' ' + each.cycle);
    }
    EXPECT_THAT(lots, ElementsAre("L1 ld-1", "L2 ld-2"));
    EXPECT_EQ(finder().lotsFrom("M1", 50).front().cycle, "ld-1");
    ASSERT_TRUE(finder().cycle("ld-1"));
    const FoundCycle cycle = *finder().cycle("ld-1");
    EXPECT_EQ(cycle.lot, "M1");
    EXPECT_EQ(cycle.sterilizer, "sz-1");
    EXPECT_EQ(cycle.purpose, "routine");
    EXPECT_EQ(cycle.at, at(7, 0).ms);
    EXPECT_EQ(cycle.counter, 101);
    EXPECT_TRUE(cycle.hasVials && cycle.hasEnded && !cycle.hasTrouble);
    EXPECT_EQ(cycle.newest, journal.entries().back().seq);
    EXPECT_EQ(finder().cycle("ld-3"), std::nullopt);
    std::vector<std::string> where;
    for (const FoundLabel& each : finder().labelsFrom("i1", 50)) {
        where.push_back(each.cycle);
    }
    EXPECT_THAT(where, ElementsAre("ld-1", "ld-2"));
    EXPECT_THAT(finder().controlsOf("pl-4", 50), ElementsAre("bc-1"));
}

TEST_P(AFinder, FindsImportedLoadsByLotAndLabelAndAmongNothingOpen)
{
    Journal journal = tests::morning();
    const std::int64_t old = journal.add(
        tests::supervisorE, at(5, 0), {"ld-old", "sz-1"},
        HistoryImported{
            .source = "R", .lot = "a-17", .outcome = "ok", .labels = {"Set 1", "Set 2"}});
    journal.add(tests::supervisorE, at(5, 10), {"ld-old2"},
                HistoryImported{.source = "R", .lot = "b-1", .outcome = "ok"});
    journal.correct(tests::supervisorE, at(9, 0), old,
                    HistoryImported{.source = "R", .lot = "a-18", .outcome = "ok"});
    fill(journal);
    for (const char* const lot : {"A-17", "A-18"}) {
        const auto found = finder().lotsFrom(lot, 5);
        ASSERT_EQ(found.size(), 1U) << lot;
        EXPECT_EQ(found.front().cycle, "ld-old");
    }
    EXPECT_THAT(labels("set"), ElementsAre("Set 1", "Set 2"));
    EXPECT_EQ(finder().labelsFrom("set1", 5).front().cycle, "ld-old");
    EXPECT_EQ(finder().labelsFrom("set1", 5).front().item, "");
    const FoundCycle cycle = finder().cycle("ld-old").value();
    EXPECT_EQ(cycle.lot, "a-18");
    EXPECT_EQ(cycle.sterilizer, "sz-1");
    EXPECT_EQ(cycle.purpose, "imported");
    EXPECT_EQ(cycle.at, at(5, 0).ms);
    EXPECT_FALSE(cycle.hasVials || cycle.hasTrouble);
    EXPECT_EQ(finder().cycle("ld-old2")->sterilizer, "");
    for (const FoundCycle& open : finder().openCycles(50)) {
        EXPECT_FALSE(open.id.starts_with("ld-old")) << open.id;
    }
    const auto importedAmong = [](const std::vector<FoundCycle>& cycles) {
        return std::ranges::count_if(
            cycles, [](const FoundCycle& each) { return each.id.starts_with("ld-old"); });
    };
    EXPECT_EQ(importedAmong(finder().cyclesBetween("sz-1", at(4, 0).ms, at(6, 0).ms, 50)), 1);
    EXPECT_EQ(importedAmong(finder().cyclesBetween("", at(4, 0).ms, at(6, 0).ms, 50)), 2);
    // Beside no other cycle.
    EXPECT_EQ(count("SELECT count(*) FROM p_mark WHERE cycle LIKE 'ld-old%'"), 0);
}

TEST_P(AFinder, ListsWhatIsOpen)
{
    Journal journal = tests::morning();
    tests::addLoaded(journal);
    tests::addDone(journal);
    const std::vector<std::string> vial{"bv-1", "ld-1"};
    journal.add(operatorA, at(8, 5), {"bv-1", "ld-1", "in-1"}, BiologicalIncubated{});
    fill(journal);
    ASSERT_EQ(finder().openVials(50).size(), 1U);
    EXPECT_EQ(finder().openVials(50).front().cycle, "ld-1");
    EXPECT_EQ(finder().openVials(50).front().product, "pr-4");
    EXPECT_EQ(finder().openVials(50).front().incubated, at(8, 5).ms);
    EXPECT_EQ(finder().vialsOf("ld-1").size(), 1U);
    const auto open = finder().openCycles(50);
    ASSERT_EQ(open.size(), 2U);
    EXPECT_EQ(open.front().id, "ld-bd");
    EXPECT_EQ(finder().cyclesBetween("sz-1", at(6, 30).ms, at(9, 0).ms, 50).size(), 1U);
    EXPECT_EQ(finder().cyclesBetween("", at(5, 0).ms, at(9, 0).ms, 50).size(), 2U);
}

TEST_P(AFinder, ForgetsWhatIsDone)
{
    Journal journal = tests::releasable();
    const std::string digest = hexOf(hashOf("evidence"));
    for (const char* cycle : {"ld-1", "ld-bd"}) {
        journal.add(operatorA, at(9, 0), {cycle},
                    DispositionSigned{.meaning = Verdict::release,
                                      .verdict = Verdict::release,
                                      .items = {},
                                      .grounds = {{}, digest, digest, "1"}});
    }
    const std::int64_t read = journal.seqOf<BiologicalRead>("bv-1");
    Journal corrected = journal;
    corrected.correct(tests::supervisorF, at(9, 5), read, EntryVoided{});
    fill(journal);
    EXPECT_THAT(finder().openVials(50), IsEmpty());
    EXPECT_THAT(finder().openCycles(50), IsEmpty());
    const loadwarden::testing::TempFolder other;
    BulkWriter writer(SqliteFile{other / "b.lw"}, at(4, 0), 100);
    write(writer, corrected.entries());
    ReadSnapshot snapshot(writer.connection());
    EXPECT_EQ(Finder(snapshot).openVials(50).size(), 1U);
}

} // namespace
} // namespace loadwarden
