#include "core/store/rebuild.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>

namespace loadwarden {

void PrintTo(const IndexDifference& difference, std::ostream* out)
{
    *out << difference.table << ' ' << (difference.missing ? "lacks " : "has ") << difference.row;
}

namespace {

using loadwarden::testing::faultOf;
using loadwarden::testing::noteAbout;
using loadwarden::testing::tamper;
using loadwarden::testing::TestJournal;
using ::testing::IsEmpty;
using ::testing::UnorderedElementsAre;

/// An index as one of the trade would be: the newest entry of each kind.
class KindIndex final : public JournalIndex {
public:
    static void makeTable(Connection& connection)
    {
        tamper(connection, {"CREATE TABLE p_kind (kind TEXT NOT NULL PRIMARY KEY, "
                            "newest BIGINT NOT NULL)"});
    }

    [[nodiscard]] std::span<const IndexTable> tables() const override
    {
        static constexpr std::array<IndexTable, 1> mine{{{"p_kind", "kind, newest"}}};
        return mine;
    }

    void take(WriteTransaction& transaction, std::span<const TakenEntry> entries) override
    {
        for (const TakenEntry& entry : entries) {
            transaction
                .statement("INSERT INTO p_kind (kind, newest) VALUES (:kind, :seq) "
                           "ON CONFLICT (kind) DO UPDATE SET newest = excluded.newest")
                .bind(":kind", entry.header.kind)
                .bind(":seq", entry.header.seq)
                .run();
        }
    }
};

class Stopped final : public Progress {
public:
    bool goOn(std::int64_t done, std::int64_t total) override
    {
        EXPECT_GT(done, 0);
        EXPECT_LE(done, total);
        return false;
    }
};

class ARebuild : public loadwarden::testing::OnBothEngines {
protected:
    void SetUp() override
    {
        OnBothEngines::SetUp();
        if (IsSkipped()) {
            return;
        }
        TestJournal made = TestJournal::make(place());
        KindIndex::makeTable(*made.connection);
        m_journal = std::make_unique<TestJournal>(place(), ConnectionOptions{},
                                                  std::vector<JournalIndex*>{&m_kinds});
        m_journal->append(noteAbout({"a", "b"})); // 2
        m_journal->append(noteAbout({"b"}));      // 3
        // Entry 1 was written before the table was there.
        std::ignore = rebuild(Rebuild::replace);
    }

    RebuildReport rebuild(Rebuild mode)
    {
        NoProgress progress;
        return rebuildIndexes(*m_journal->connection, {&m_kinds}, mode, progress);
    }

    KindIndex m_kinds;
    std::unique_ptr<TestJournal> m_journal;
};

INSTANTIATE_TEST_SUITE_P(Store, ARebuild, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(ARebuild, FindsNothingInTablesThatGrewWithTheJournal)
{
    m_journal->append(noteAbout({"c"}));
    const RebuildReport report = rebuild(Rebuild::compare);
    EXPECT_THAT(report.differences, IsEmpty());
    EXPECT_EQ(report.differenceCount, 0);
    EXPECT_EQ(report.entries, 4);
}

TEST_P(ARebuild, NamesEveryRowThatDiffersAndMendsThem)
{
    tamper(*m_journal->connection,
           {"DELETE FROM p_subject WHERE seq = 3", "INSERT INTO p_subject VALUES (7, 0, 'z')",
            "UPDATE p_kind SET newest = 2 WHERE kind = 'note'", "DELETE FROM p_head"});
    const auto asTampered = UnorderedElementsAre(
        IndexDifference{"p_subject", "3 0 b", true}, IndexDifference{"p_subject", "7 0 z", false},
        IndexDifference{"p_kind", "note 3", true}, IndexDifference{"p_kind", "note 2", false},
        IndexDifference{"p_head", "1 3 " + hexOf(m_journal->store->lastKnown().hash), true});
    EXPECT_THAT(rebuild(Rebuild::compare).differences, asTampered);
    EXPECT_THAT(rebuild(Rebuild::replace).differences, asTampered) << "comparing changed nothing";
    EXPECT_THAT(rebuild(Rebuild::compare).differences, IsEmpty());
    EXPECT_EQ(m_journal->append(noteAbout({"d"})).head.seq, 4);
}

TEST_P(ARebuild, LeavesAllAsItIsWhenCancelled)
{
    tamper(*m_journal->connection, {"DELETE FROM p_subject WHERE seq = 3"});
    Stopped stopped;
    const RebuildReport report =
        rebuildIndexes(*m_journal->connection, {&m_kinds}, Rebuild::replace, stopped);
    EXPECT_TRUE(report.cancelled);
    EXPECT_EQ(rebuild(Rebuild::compare).differenceCount, 1);
}

} // namespace
} // namespace loadwarden
