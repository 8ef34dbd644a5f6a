// A check of reading, taken by keys.
#include "ui/indicators/check_result_view.h"
#include "ui/indicators/check_view.h"
#include "ui/indicators/indicator_schematic.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>

#include <memory>

namespace loadwarden::ui_tests {
namespace {

using namespace loadwarden::ui;

class CheckOnScreen : public ::testing::Test {
protected:
    CheckOnScreen() : look(*qobject_cast<QApplication*>(QCoreApplication::instance()))
    {
        look.apply(Theme::light, TextSize::normal);
    }

    void openCheck(std::vector<CheckProduct> products = threeProducts())
    {
        view = std::make_unique<CheckView>(look, products, 7, [this] { return now; });
        QObject::connect(view.get(), &CheckView::finished, view.get(),
                         [this](const CheckResult& made) { result = made; });
        view->resize(1366, 700);
        view->show();
        QApplication::setActiveWindow(view.get());
        view->focusFirst();
        QTest::qWait(20);
    }

    static std::vector<CheckProduct> threeProducts()
    {
        CheckProduct front{.id = "f",
                           .name = "Product F",
                           .type = 5,
                           .response = Response::movingFront,
                           .directions = ReadingDirections{}};
        front.directions->text = "Hold it flat.";
        return {front,
                {.id = "c",
                 .name = "Product C",
                 .type = 1,
                 .response = Response::colour,
                 .directions = {}},
                {.id = "s",
                 .name = "Product S",
                 .type = 2,
                 .response = Response::sheet,
                 .directions = {}}};
    }

    static Qt::Key keyOf(ReadAs readAs)
    {
        return readAs == ReadAs::accept   ? Qt::Key_A
               : readAs == ReadAs::reject ? Qt::Key_R
                                          : Qt::Key_U;
    }

    void answer(Qt::Key key, std::int64_t afterMs = 2'000)
    {
        now += afterMs;
        QTest::keyClick(view.get(), key);
    }

    bool sees(const QString& says) const
    {
        for (const auto* const label : view->findChildren<QLabel*>()) {
            if (label->isVisible() && label->text().contains(says)) {
                return true;
            }
        }
        return false;
    }

    QPushButton* button(const QString& begins) const
    {
        for (auto* const each : view->findChildren<QPushButton*>()) {
            if (each->isVisible() && each->text().startsWith(begins)) {
                return each;
            }
        }
        return nullptr;
    }

    Look look;
    std::int64_t now = 1'000'000;
    std::unique_ptr<CheckView> view;
    std::optional<CheckResult> result;
};

TEST_F(CheckOnScreen, IsTakenByKeysAloneAndEndsWithItsResult)
{
    openCheck();
    ASSERT_EQ(view->drawn().size(), 20U);
    EXPECT_TRUE(sees("Indicator 1 of 20"));
    for (const Drawn& each : view->drawn()) {
        EXPECT_FALSE(result);
        answer(keyOf(readAsOf(each.truth)));
    }
    ASSERT_TRUE(result);
    EXPECT_EQ(result->right, 20);
    EXPECT_EQ(result->tookMs, 40'000);
    EXPECT_EQ(result->seed, 7U);
    EXPECT_EQ(result->drawn, view->drawn());
    EXPECT_TRUE(sees("20 of 20 right"));
    EXPECT_TRUE(sees("0:40"));
    EXPECT_FALSE(sees("What was not read right"));
    QSignalSpy left(view.get(), &CheckView::left);
    QTest::mouseClick(button("Close the result"), Qt::LeftButton);
    EXPECT_EQ(left.count(), 1);
}

TEST_F(CheckOnScreen, ExplainsEachMistakeBesideItsDrawing)
{
    openCheck();
    for (const Drawn& each : view->drawn()) {
        answer(keyOf(readAsOf(each.truth) == ReadAs::accept ? ReadAs::reject : ReadAs::accept));
    }
    ASSERT_TRUE(result);
    EXPECT_EQ(result->right, 0);
    EXPECT_TRUE(sees("0 of 20 right"));
    EXPECT_TRUE(sees("Accepted what fails"));
    EXPECT_TRUE(sees("Rejected what passes"));
    EXPECT_TRUE(sees("it need not fill it"));
    EXPECT_TRUE(sees("you said reject after 2.0 s"));
    const auto* const shown = view->findChild<CheckResultView*>();
    ASSERT_NE(shown, nullptr);
    EXPECT_EQ(shown->findChildren<IndicatorSchematic*>().size(), 20);
}

TEST_F(CheckOnScreen, AnAnswerThatComesTooSoonOrFromAHeldKeyIsNone)
{
    openCheck();
    answer(Qt::Key_A, 50);
    EXPECT_EQ(view->answered(), 0U);
    now += 2'000;
    QKeyEvent held(QEvent::KeyPress, Qt::Key_A, Qt::NoModifier, "a", true);
    QApplication::sendEvent(view.get(), &held);
    EXPECT_EQ(view->answered(), 0U);
    QTest::keyClick(view.get(), Qt::Key_A, Qt::ControlModifier);
    QTest::keyClick(view.get(), Qt::Key_Space);
    QTest::keyClick(view.get(), Qt::Key_Return);
    EXPECT_EQ(view->answered(), 0U);
    answer(Qt::Key_A);
    EXPECT_EQ(view->answered(), 1U);
}

TEST_F(CheckOnScreen, APauseHidesTheIndicatorAndCountsForNoTime)
{
    openCheck();
    now += 3'000;
    QTest::keyClick(view.get(), Qt::Key_Escape);
    EXPECT_TRUE(view->isPaused());
    EXPECT_TRUE(sees("Paused"));
    for (const auto* const picture : view->findChildren<IndicatorSchematic*>()) {
        EXPECT_FALSE(picture->isVisible());
    }
    answer(Qt::Key_A, 60'000);
    EXPECT_EQ(view->answered(), 0U);
    QTest::mouseClick(button("Go on"), Qt::LeftButton);
    EXPECT_FALSE(view->isPaused());
    for (const Drawn& each : view->drawn()) {
        answer(keyOf(readAsOf(each.truth)), 1'000);
    }
    ASSERT_TRUE(result);
    EXPECT_EQ(result->answers.front().tookMs, 4'000);
    EXPECT_EQ(result->tookMs, 23'000);
}

TEST_F(CheckOnScreen, WhoGivesUpIsAskedOnceAndLeavesNothing)
{
    openCheck();
    QSignalSpy gaveUp(view.get(), &CheckView::gaveUp);
    answer(Qt::Key_A);
    QTest::mouseClick(button("Give up"), Qt::LeftButton);
    EXPECT_EQ(gaveUp.count(), 0);
    answer(Qt::Key_A);
    EXPECT_EQ(view->answered(), 2U) << "they went on";
    QTest::mouseClick(button("Give up"), Qt::LeftButton);
    QTest::mouseClick(button("Really give up?"), Qt::LeftButton);
    EXPECT_EQ(gaveUp.count(), 1);
    for (int i = 0; i < 20; ++i) {
        answer(Qt::Key_A);
    }
    EXPECT_FALSE(result);
}

TEST_F(CheckOnScreen, ShowsTheProductWithItsDirectionsAndTheTime)
{
    openCheck();
    answer(Qt::Key_A, 61'000);
    EXPECT_TRUE(sees("Time 1:01"));
    for (std::size_t i = 1; i < view->drawn().size(); ++i) {
        const Response response = view->drawn()[i].response;
        EXPECT_EQ(sees("Hold it flat."), response == Response::movingFront);
        EXPECT_EQ(sees("no sample taken"), response == Response::colour);
        EXPECT_EQ(sees("Product S"), response == Response::sheet);
        answer(Qt::Key_U);
    }
    EXPECT_EQ(result->notSure, 19);
}

TEST_F(CheckOnScreen, WithNoProductToDrawThereIsNoCheck)
{
    openCheck(
        {{.id = "b", .name = "B", .type = 0, .response = Response::growth, .directions = {}}});
    EXPECT_TRUE(sees("There is nothing to draw"));
    answer(Qt::Key_A);
    QTest::keyClick(view.get(), Qt::Key_Escape);
    EXPECT_EQ(view->answered(), 0U);
    EXPECT_FALSE(result);
}

} // namespace
} // namespace loadwarden::ui_tests
