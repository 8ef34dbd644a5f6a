// The list of two million records: what is asked for, and what is kept.
#include "ui/records/records_model.h"

#include <gtest/gtest.h>

#include <QAbstractItemModelTester>
#include <QElapsedTimer>

#include <deque>

namespace loadwarden::ui_tests {
namespace {

constexpr std::int64_t records = 2'000'000;
constexpr std::int64_t rowsAPage = 100;

/// Answers as a journal of so many records would; every `every`th of them fits. Answers come when
/// the test says so.
class FakeJournal {
public:
    explicit FakeJournal(std::int64_t every = 1) : m_every(every) {}

    ui::RecordsModel::Source source()
    {
        return [this](const CyclePlace& behind, ui::RecordsModel::Done done) {
            ++asked;
            m_waiting.emplace_back(behind, std::move(done));
        };
    }

    /// Answers everything that was asked for, and what that asks for.
    void answer()
    {
        while (!m_waiting.empty()) {
            auto [behind, done] = std::move(m_waiting.front());
            m_waiting.pop_front();
            done(isBroken ? std::nullopt : std::optional(page(behind)));
        }
    }

    [[nodiscard]] std::size_t waiting() const { return m_waiting.size(); }

    int asked = 0;
    bool isBroken = false;
    std::int64_t newest = records; ///< its number; the oldest is 1

private:
    [[nodiscard]] RecordPage page(const CyclePlace& behind) const
    {
        RecordPage page{.last = behind};
        std::int64_t number = std::min(behind.at - 1, newest);
        for (std::int64_t looked = 0; number > 0 && looked < 4 * rowsAPage; --number, ++looked) {
            page.last = {.at = number, .cycle = "ld-" + std::to_string(number)};
            if (number % m_every == 0) {
                page.rows.push_back({.cycle = page.last.cycle,
                                     .lot = std::to_string(number),
                                     .at = Instant{number}});
            }
            if (static_cast<std::int64_t>(page.rows.size()) == rowsAPage) {
                --number;
                break;
            }
        }
        page.isEnd = number == 0;
        return page;
    }

    std::int64_t m_every;
    std::deque<std::pair<CyclePlace, ui::RecordsModel::Done>> m_waiting;
};

class TheModel : public ::testing::Test {
protected:
    static ui::RecordsModel::NameOf names()
    {
        return [](const std::string& id) { return QString::fromStdString(id); };
    }

    static QString lotAt(const ui::RecordsModel& model, int row)
    {
        return model.index(row, ui::RecordsModel::lot).data().toString();
    }

    /// Rows that are in memory.
    static int kept(const ui::RecordsModel& model)
    {
        int rows = 0;
        for (int row = 0; row < model.rowCount(); ++row) {
            rows += model.at(row) != nullptr ? 1 : 0;
        }
        return rows;
    }
};

TEST_F(TheModel, IsAModel)
{
    FakeJournal journal;
    journal.newest = 250; // the tester asks for more at every change
    ui::RecordsModel model(journal.source(), names());
    const QAbstractItemModelTester tester(&model,
                                          QAbstractItemModelTester::FailureReportingMode::Fatal);
    model.search();
    journal.answer();
    model.showing(60, 99);
    journal.answer();
    model.search();
    journal.answer();
    EXPECT_EQ(model.rowCount(), journal.newest);
    EXPECT_EQ(model.columnCount(), ui::RecordsModel::columns);
    for (int column = 0; column < model.columnCount(); ++column) {
        EXPECT_FALSE(
            model.headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().isEmpty());
    }
}

TEST_F(TheModel, AsksForNoMoreThanIsNearTheView)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    model.search();
    EXPECT_EQ(journal.waiting(), 1U);
    journal.answer();
    EXPECT_EQ(journal.asked, 1);
    EXPECT_EQ(model.rowCount(), rowsAPage);
    model.showing(0, 9);
    EXPECT_EQ(journal.asked, 1) << "what is seen is there";
    model.showing(35, 44);
    EXPECT_EQ(journal.asked, 2) << "the next before the end is seen";
    model.showing(36, 45);
    EXPECT_EQ(journal.asked, 2) << "and only once";
    journal.answer();
    EXPECT_EQ(model.rowCount(), 2 * rowsAPage);
    EXPECT_EQ(lotAt(model, 0), "2000000");
    EXPECT_EQ(lotAt(model, 150), "1999850");
}

TEST_F(TheModel, KeepsOnlyWhatIsNearTheViewAndAsksForTheRestAgain)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    model.search();
    journal.answer();
    constexpr int far = 50'000;
    while (model.rowCount() < far) {
        model.showing(model.rowCount() - 10, model.rowCount() - 1);
        journal.answer();
    }
    EXPECT_LE(kept(model), 20 * rowsAPage);
    const int before = journal.asked;
    model.showing(25'000, 25'009);
    EXPECT_EQ(lotAt(model, 25'005), QStringLiteral("…"))
        << "not here yet, and nothing waits for it";
    journal.answer();
    EXPECT_EQ(lotAt(model, 25'005), QString::number(records - 25'005));
    EXPECT_EQ(journal.asked, before + 1);
    model.showing(30'095, 30'104);
    journal.answer();
    EXPECT_EQ(journal.asked, before + 3) << "both that are seen";
    EXPECT_EQ(lotAt(model, 30'100), QString::number(records - 30'100));
    EXPECT_LE(kept(model), 20 * rowsAPage);
}

TEST_F(TheModel, IsQuickFarDown)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    model.search();
    journal.answer();
    QElapsedTimer timer;
    timer.start();
    while (!model.isEnd()) {
        model.showing(model.rowCount() - 10, model.rowCount() - 1);
        journal.answer();
    }
    const auto all = timer.elapsed();
    EXPECT_EQ(model.rowCount(), records);
    EXPECT_EQ(lotAt(model, records - 1), "1");
    timer.restart();
    for (int step = 0; step < 1'000; ++step) {
        const int row = step * 1'999;
        model.showing(row, row + 9);
        journal.answer();
        ASSERT_EQ(lotAt(model, row), QString::number(records - row));
    }
    std::cout << "all " << records << " records gone through in " << all << " ms; 1,000 places in "
              << timer.elapsed() << " ms\n";
}

TEST_F(TheModel, StopsLookingWhereLittleFitsAndGoesOnWhenAsked)
{
    FakeJournal journal(500'000);
    ui::RecordsModel model(journal.source(), names());
    model.search();
    journal.answer();
    EXPECT_EQ(model.rowCount(), 1);
    EXPECT_TRUE(model.hasStopped());
    EXPECT_FALSE(model.isEnd());
    EXPECT_FALSE(model.isLooking());
    EXPECT_EQ(journal.asked, 40) << "looks, and no more";
    ASSERT_TRUE(model.lookedBackTo());
    EXPECT_EQ(model.lookedBackTo()->ms, records - 40 * 400 + 1);
    EXPECT_FALSE(model.canFetchMore({}));
    model.showing(0, 0);
    EXPECT_EQ(journal.asked, 40) << "only somebody goes on";
    model.goOn();
    journal.answer();
    EXPECT_EQ(journal.asked, 80);
    while (model.hasStopped()) {
        model.goOn();
        journal.answer();
    }
    EXPECT_TRUE(model.isEnd());
    EXPECT_EQ(model.rowCount(), 4);
}

TEST_F(TheModel, TakesNoAnswerToAnOlderSearch)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    model.search();
    model.search();
    EXPECT_EQ(journal.waiting(), 2U);
    journal.answer();
    EXPECT_EQ(model.rowCount(), rowsAPage);
}

TEST_F(TheModel, BeginsAnewOnlyWhereTheNewestHaveChanged)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    model.search();
    journal.answer();
    model.showing(90, 99);
    journal.answer();
    model.refresh();
    journal.answer();
    EXPECT_EQ(model.rowCount(), 2 * rowsAPage) << "nothing moves";
    ++journal.newest;
    model.refresh();
    journal.answer();
    EXPECT_EQ(model.rowCount(), rowsAPage);
    EXPECT_EQ(lotAt(model, 0), "2000001");
}

TEST_F(TheModel, StopsWhereTheJournalDoesNotAnswer)
{
    FakeJournal journal;
    ui::RecordsModel model(journal.source(), names());
    journal.isBroken = true;
    model.search();
    journal.answer();
    EXPECT_TRUE(model.hasStopped());
    EXPECT_EQ(model.rowCount(), 0);
    journal.isBroken = false;
    model.goOn();
    journal.answer();
    EXPECT_EQ(model.rowCount(), rowsAPage);
}

} // namespace
} // namespace loadwarden::ui_tests
