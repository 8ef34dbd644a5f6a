// The tables of ActIndexes, on both engines.
#include "core/store/indexes/act_indexes.h"
#include "tests/core/store/reach/stored_weeks.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <tuple>

namespace loadwarden {

void PrintTo(const IndexDifference& difference, std::ostream* out)
{
    *out << difference.table << ' ' << (difference.missing ? "lacks " : "has ") << difference.row;
}

namespace {

using loadwarden::testing::BulkWriter;
using loadwarden::testing::draftOf;
using loadwarden::testing::entriesFor;
using loadwarden::testing::faultOf;
using loadwarden::testing::seqsOf;
using loadwarden::testing::tamper;
using loadwarden::tests::at;
using loadwarden::tests::cyclesIn;
using loadwarden::tests::Journal;
using loadwarden::tests::weeks;
using ::testing::IsEmpty;

class TheIndexes : public loadwarden::testing::OnBothEngines {
protected:
    /// A row of each table, as texts.
    static std::vector<std::string> rowsOf(Connection& connection, const IndexTable& table)
    {
        ReadSnapshot snapshot(connection);
        std::string columns = "SELECT CAST(";
        for (const char c : table.columns) {
            columns += c == ',' ? std::string(" AS TEXT) || ' ' || CAST(") : std::string(1, c);
        }
        Statement rows = snapshot.statement(columns + " AS TEXT) FROM " + std::string(table.name));
        std::vector<std::string> all;
        while (rows.step()) {
            all.push_back(rows.text(0));
        }
        std::ranges::sort(all);
        return all;
    }
};

INSTANTIATE_TEST_SUITE_P(Store, TheIndexes, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(TheIndexes, AreWhatTheyAreWhenTheyAreBuiltAnew)
{
    BulkWriter writer(place(), at(4, 0), 1'000);
    write(writer, weeks(11, {.days = 6}).entries());
    NoProgress progress;
    const RebuildReport report =
        rebuildIndexes(writer.connection(), {}, Rebuild::compare, progress);
    EXPECT_THAT(report.differences, IsEmpty());
    const ActIndexes indexes;
    for (const IndexTable& table : indexes.tables()) {
        EXPECT_FALSE(rowsOf(writer.connection(), table).empty()) << table.name;
    }
}

TEST_P(TheIndexes, DoNotDependOnHowManyActsOneTransactionHas)
{
    const Journal journal = weeks(12, {.days = 2});
    BulkWriter many(place(), at(4, 0), 1'000);
    write(many, journal.entries());
    const loadwarden::testing::TempFolder other;
    BulkWriter single(SqliteFile{other / "b.lw"}, at(4, 0), 1);
    write(single, journal.entries());
    const auto journalOf = [](Connection& connection) {
        return rowsOf(connection, {"j_entry", "seq, hash, kind, bytes"});
    };
    EXPECT_EQ(journalOf(many.connection()), journalOf(single.connection()));
    const ActIndexes indexes;
    for (const IndexTable& table : indexes.tables()) {
        EXPECT_EQ(rowsOf(many.connection(), table), rowsOf(single.connection(), table))
            << table.name;
    }
}

TEST_P(TheIndexes, LeadToTheSameEntriesOnEveryEngine)
{
    const Journal journal = weeks(13, {.days = 4});
    BulkWriter writer(place(), at(4, 0), 1'000);
    write(writer, journal.entries());
    const loadwarden::testing::TempFolder other;
    BulkWriter sqlite(SqliteFile{other / "b.lw"}, at(4, 0), 1'000);
    write(sqlite, journal.entries());
    for (const std::string& cycle : cyclesIn(journal.entries())) {
        EXPECT_EQ(seqsOf(entriesFor(writer.connection(), cycle)),
                  seqsOf(entriesFor(sqlite.connection(), cycle)))
            << cycle;
    }
}

TEST_P(TheIndexes, MustBeOfThisProgramsRules)
{
    BulkWriter writer(place(), at(4, 0), 1);
    const Journal journal = weeks(14, {.days = 1});
    write(writer, journal.entries());
    const auto next = [&] { writer.add(draftOf(journal.entries().back())); };
    EXPECT_EQ(faultOf(next), std::nullopt);
    // As after a migration from a schema without these tables, or by an older program.
    for (const char* sql :
         {"DELETE FROM s_index_rules", "INSERT INTO s_index_rules VALUES (1, 0)"}) {
        tamper(writer.connection(), {"DELETE FROM p_mark", sql});
        EXPECT_EQ(faultOf([&] { std::ignore = entriesFor(writer.connection(), "ld-1"); }),
                  StoreFault::older);
        Connection other(place());
        FixedClock clock(at(4, 0));
        JournalStore store(other, clock, *Zone::find("UTC"));
        const EntryDraft draft = draftOf(journal.entries().back()).draft;
        EXPECT_EQ(faultOf([&] { store.append(std::span(&draft, 1)); }), StoreFault::older);
    }
    NoProgress progress;
    EXPECT_GT(rebuildIndexes(writer.connection(), {}, Rebuild::replace, progress).differenceCount,
              0);
    EXPECT_EQ(faultOf(next), std::nullopt);
    EXPECT_EQ(faultOf([&] { std::ignore = entriesFor(writer.connection(), "ld-1"); }),
              std::nullopt);
}

TEST_P(TheIndexes, AreNotBrokenByActsThatAreNotUnderstood)
{
    BulkWriter writer(place(), at(4, 0), 1);
    const auto strange = [](const char* kind, std::int32_t version, const char* body) {
        EntryDraft draft;
        draft.happenedAt = {at(5, 0), 0};
        draft.kind = kind;
        draft.version = version;
        draft.subjects = {"ld-1", "sz-1", "bv-1", "it-1", "in-1", "no id"};
        draft.body = body;
        return loadwarden::testing::TimedDraft{draft, at(5, 0)};
    };
    writer.add(strange("load.weighed", 1, "{\"grams\":\"12\"}"));
    writer.add(strange("cycle.reserved", 7, "{}"));
    writer.add(strange("cycle.started", 1, "{\"shown\":5}"));
    writer.add(strange("biological.read", 1, "{}"));
    writer.flush();
    const std::vector<Entry> part = entriesFor(writer.connection(), "ld-1");
    EXPECT_EQ(seqsOf(part), (std::vector<std::int64_t>{1, 2, 3, 4, 5}));
    EXPECT_FALSE(foldEvidence(part, "ld-1").isUnderstood);
    NoProgress progress;
    EXPECT_THAT(rebuildIndexes(writer.connection(), {}, Rebuild::compare, progress).differences,
                IsEmpty());
}

} // namespace
} // namespace loadwarden
