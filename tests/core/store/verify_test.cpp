#include "core/store/verify.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {

void PrintTo(const JournalFault& fault, std::ostream* out)
{
    *out << sentenceOf(fault);
}

namespace {

using loadwarden::testing::dropGuards;
using loadwarden::testing::noteAbout;
using loadwarden::testing::tamper;
using loadwarden::testing::TestJournal;
using loadwarden::testing::testTime;
using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

class Verification : public loadwarden::testing::OnBothEngines {
protected:
    void SetUp() override
    {
        OnBothEngines::SetUp();
        if (IsSkipped()) {
            return;
        }
        m_journal = std::make_unique<TestJournal>(TestJournal::make(place()));
        for (int i = 2; i <= 9; ++i) {
            m_journal->append(noteAbout({"ld-" + std::to_string(i % 2), "it-1"}));
        }
    }

    VerifyReport verify(const VerifyRequest& request = {})
    {
        Connection reader(place(), {.access = Access::read});
        NoProgress progress;
        return verifyJournal(reader, request, progress);
    }

    std::vector<JournalFault> faultsAfter(const std::vector<std::string>& sql)
    {
        dropGuards(*m_journal->connection, "j_entry");
        std::vector<std::string> all = sql;
        for (const std::string& guard : m_journal->connection->dialect().appendOnly("j_entry")) {
            if (!guard.starts_with("CREATE FUNCTION") && guard.find("TRUNCATE") == guard.npos) {
                all.push_back(guard);
            }
        }
        tamper(*m_journal->connection, all);
        return verify().faults;
    }

    [[nodiscard]] Head head() const { return m_journal->store->lastKnown(); }

    std::unique_ptr<TestJournal> m_journal;
};

INSTANTIATE_TEST_SUITE_P(Store, Verification, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(Verification, FindsNothingInAJournalAsWritten)
{
    const VerifyReport report = verify();
    EXPECT_THAT(report.faults, IsEmpty());
    EXPECT_TRUE(report.sound());
    EXPECT_EQ(report.entries, 9);
    EXPECT_EQ(report.head, head());
    EXPECT_THAT(report.clockSteps, IsEmpty());
}

TEST_P(Verification, BeginsBehindATrustedEntry)
{
    const Head middle = head();
    m_journal->append(noteAbout({"a"}));
    const VerifyReport report = verify({.after = middle});
    EXPECT_THAT(report.faults, IsEmpty());
    EXPECT_EQ(report.entries, 1);
    EXPECT_EQ(report.head.seq, 10);
    EXPECT_THAT(verify({.after = Head{9, hashOf("other")}}).faults,
                Contains(JournalFault{JournalFaultKind::start, 9, ""}));
    EXPECT_THAT(verify({.after = Head{99, hashOf("other")}}).faults,
                Contains(JournalFault{JournalFaultKind::start, 99, ""}));
}

TEST_P(Verification, ComparesWithTheHeadsOnPaper)
{
    EXPECT_TRUE(verify({.expected = {head()}}).sound());
    EXPECT_THAT(verify({.expected = {Head{9, hashOf("x")}, Head{10, hashOf("x")}}}).faults,
                ElementsAre(JournalFault{JournalFaultKind::expectedEntryChanged, 9, ""},
                            JournalFault{JournalFaultKind::expectedEntryGone, 10, ""}));
}

TEST_P(Verification, NamesAnEditedEntry)
{
    EXPECT_THAT(faultsAfter({"UPDATE j_entry SET bytes = replace(bytes, 'technician', 'supervisor')"
                             " WHERE seq = 4"}),
                ElementsAre(JournalFault{JournalFaultKind::edited, 4, ""}));
}

TEST_P(Verification, NamesWhatIsMissingOnce)
{
    EXPECT_THAT(faultsAfter({"DELETE FROM j_entry WHERE seq IN (4, 5)",
                             "DELETE FROM p_subject WHERE seq IN (4, 5)"}),
                ElementsAre(JournalFault{JournalFaultKind::missing, 4, "the next one there is 6"}));
}

TEST_P(Verification, NamesATailCutOff)
{
    EXPECT_THAT(
        faultsAfter({"DELETE FROM j_entry WHERE seq > 7", "DELETE FROM p_subject WHERE seq > 7"}),
        ElementsAre(JournalFault{JournalFaultKind::headRow, 7, ""}));
}

TEST_P(Verification, NamesTheTablesBesideTheJournal)
{
    const auto faults = faultsAfter({
        "UPDATE j_entry SET kind = 'other' WHERE seq = 2",
        "DELETE FROM p_subject WHERE seq = 3 AND ordinal = 1",
        "UPDATE p_subject SET subject = 'ld-9' WHERE seq = 4 AND ordinal = 0",
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (5, 2, 'more')",
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (12, 0, 'none')",
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (0, 0, 'none')",
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (1, 1, 'opening')",
    });
    EXPECT_THAT(faults,
                ::testing::UnorderedElementsAre(
                    JournalFault{JournalFaultKind::kindColumn, 2, ""},
                    JournalFault{JournalFaultKind::subjectRows, 3, ""},
                    JournalFault{JournalFaultKind::subjectRows, 4, ""},
                    JournalFault{JournalFaultKind::subjectRows, 5, ""},
                    JournalFault{JournalFaultKind::subjectRows, 12, "there is no such entry"},
                    JournalFault{JournalFaultKind::subjectRows, 0, "there is no such entry"},
                    JournalFault{JournalFaultKind::subjectRows, 1, ""}));
}

TEST_P(Verification, NamesTheTableThatLostItsGuards)
{
    dropGuards(*m_journal->connection, "j_lot");
    EXPECT_THAT(verify().faults, ElementsAre(JournalFault{JournalFaultKind::guards, 0, "j_lot"}));
}

TEST_P(Verification, NamesANumberThatNoJournalHas)
{
    EXPECT_THAT(
        faultsAfter({"INSERT INTO j_entry (seq, hash, kind, bytes) VALUES (-1, 'h', 'k', 'b')"}),
        Contains(Field(&JournalFault::seq, -1)));
}

TEST_P(Verification, ListsWhereTheClockWentBack)
{
    m_journal->clock->set(testTime - Duration::hours(1));
    m_journal->append(noteAbout({"a"}));
    m_journal->append(noteAbout({"a"}));
    const VerifyReport report = verify();
    EXPECT_TRUE(report.sound());
    EXPECT_THAT(report.clockSteps, ElementsAre(ClockStep{10, Duration::hours(1)}));
}

class Counting final : public Progress {
public:
    explicit Counting(std::int64_t until) : m_until(until) {}

    bool goOn(std::int64_t done, std::int64_t total) override
    {
        EXPECT_LE(done, total);
        m_last = done;
        return done < m_until;
    }

    [[nodiscard]] std::int64_t last() const { return m_last; }

private:
    std::int64_t m_until;
    std::int64_t m_last = 0;
};

TEST_P(Verification, SaysHowFarItHasComeAndIsCancelled)
{
    const std::vector<EntryDraft> drafts(3000, noteAbout({"a"}));
    std::ignore = m_journal->store->append(drafts);
    Counting whole(toTheEnd);
    EXPECT_TRUE(verifyJournal(*m_journal->connection, {}, whole).sound());
    EXPECT_EQ(whole.last(), 3009);
    Counting half(1500);
    const VerifyReport report = verifyJournal(*m_journal->connection, {}, half);
    EXPECT_TRUE(report.cancelled);
    EXPECT_FALSE(report.sound());
    EXPECT_EQ(report.entries, half.last());
}

TEST(AFault, IsSaidWithItsEntry)
{
    for (int kind = 0; kind <= static_cast<int>(JournalFaultKind::expectedEntryChanged); ++kind) {
        const std::string sentence = sentenceOf({static_cast<JournalFaultKind>(kind), 512, "x"});
        EXPECT_THAT(sentence, ::testing::EndsWith(" (x).")) << kind;
    }
    EXPECT_THAT(sentenceOf({JournalFaultKind::edited, 512, ""}), HasSubstr("Entry 512 "));
}

TEST(AHead, IsReadAsItStandsOnPaper)
{
    const std::string hex = hexOf(hashOf("x"));
    EXPECT_EQ(parseHead("12:" + hex), (Head{12, hashOf("x")}));
    for (const std::string& bad : {std::string(), hex, ":" + hex, "0:" + hex, "-1:" + hex,
                                   "12 :" + hex, "12:" + hex + "0", "12:" + hex.substr(1)}) {
        EXPECT_EQ(parseHead(bad), std::nullopt) << bad;
    }
}

} // namespace
} // namespace loadwarden
