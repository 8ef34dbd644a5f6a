#include "core/store/lot_numbers.h"
#include "tests/core/store/store_support.h"
#include "tests/core/store/test_journal.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using loadwarden::testing::faultOf;
using loadwarden::testing::tamper;
using loadwarden::testing::TestJournal;

const Date aDay = parseDate("2031-03-04").value();

class LotNumbers : public loadwarden::testing::OnBothEngines {
protected:
    void SetUp() override
    {
        OnBothEngines::SetUp();
        if (!IsSkipped()) {
            m_journal = std::make_unique<TestJournal>(TestJournal::make(place()));
        }
    }

    std::int64_t reserve(const std::string& sterilizer, Date day)
    {
        WriteTransaction transaction(*m_journal->connection);
        const LotReservation lot = reserveLot(transaction, sterilizer, day);
        transaction.commit();
        return lot.sequence;
    }

    void skip(Instant backup, Instant now)
    {
        WriteTransaction transaction(*m_journal->connection);
        skipLots(transaction, backup, now, Zone::find("America/Chicago").value());
        transaction.commit();
    }

    std::unique_ptr<TestJournal> m_journal;
};

INSTANTIATE_TEST_SUITE_P(Store, LotNumbers, loadwarden::testing::bothEngines,
                         loadwarden::testing::engineName);

TEST_P(LotNumbers, CountBySterilizerAndDay)
{
    EXPECT_EQ(reserve("3", aDay), 1);
    EXPECT_EQ(reserve("3", aDay), 2);
    EXPECT_EQ(reserve("4", aDay), 1);
    EXPECT_EQ(reserve("3", aDay + 1), 1);
    EXPECT_EQ(reserve("3", aDay), 3);
}

TEST_P(LotNumbers, AreGivenOnlyWithTheTransaction)
{
    {
        WriteTransaction transaction(*m_journal->connection);
        EXPECT_EQ(reserveLot(transaction, "3", aDay).sequence, 1);
    }
    EXPECT_EQ(reserve("3", aDay), 1) << "nobody has seen the first";
}

TEST_P(LotNumbers, AreNotForgotten)
{
    reserve("3", aDay);
    EXPECT_EQ(faultOf([&] { tamper(*m_journal->connection, {"DELETE FROM j_lot"}); }),
              StoreFault::refused);
}

TEST_P(LotNumbers, NeedANameThatCanStandOnALabel)
{
    for (const char* name : {"", "3-1", "A B", "ü", "123456789"}) {
        EXPECT_EQ(faultOf([&] { reserve(name, aDay); }), StoreFault::misuse) << name;
    }
}

TEST_P(LotNumbers, SkipAheadAfterARestoreAndFurtherAfterTheNext)
{
    // A backup of the evening before, restored at 09:00 and again, since that file was lost too, at
    // 09:20, both local time.
    const Instant backup = parseInstant("2031-03-03T22:00-06:00").value();
    const Instant first = parseInstant("2031-03-04T09:00-06:00").value();
    reserve("3", aDay);
    skip(backup, first);
    const std::int64_t after = reserve("3", aDay);
    EXPECT_EQ(after, 9 * 60 + 100 + 1);
    EXPECT_EQ(reserve("4", aDay), after) << "a sterilizer that the backup does not know";
    EXPECT_EQ(reserve("4", aDay - 1), 33 * 60 + 100 + 1) << "loads of the evening before";
    EXPECT_EQ(reserve("4", aDay - 2), 57 * 60 + 100 + 1) << "a night shift of the day before";
    EXPECT_EQ(reserve("4", aDay - 3), 1);
    EXPECT_EQ(reserve("4", aDay + 1), 1) << "no label is of tomorrow";

    skip(backup, first + Duration::minutes(20));
    EXPECT_EQ(reserve("5", aDay), after + 20) << "beyond one a minute";
}

TEST(ALotNumber, StandsOnLabelsWithTheDayOfTheYear)
{
    // Days of the year: GNU date, `date -d 2031-03-04 +%j`.
    EXPECT_EQ(lotNumberText({"3", aDay, 7}), "3-2031-063-07");
    EXPECT_EQ(lotNumberText({"B2", parseDate("2031-01-01").value(), 1}), "B2-2031-001-01");
    EXPECT_EQ(lotNumberText({"3", parseDate("2032-12-31").value(), 641}), "3-2032-366-641");
}

} // namespace
} // namespace loadwarden
