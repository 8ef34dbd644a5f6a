// The indicator desk, by keys.
#include "tests/ui/load_screen.h"

#include <QTest>

namespace loadwarden::ui_tests {
namespace {

class IndicatorDeskOnScreen : public LoadOnScreen {
protected:
    void openDesk()
    {
        desktop.open();
        desktop.signIn();
        desktop.press(Qt::Key_4, Qt::ControlModifier);
        ASSERT_TRUE(desktop.comesToSee("Is this indicator acceptable?"));
    }
};

TEST_F(IndicatorDeskOnScreen, AnswersOneIndicatorByOneKey)
{
    cycle = runLoad(desktop, Implant::no);
    openDesk();
    ASSERT_TRUE(desktop.comesToSee("Choose or scan the lot"));
    choose("Lot of the indicator", 2);
    ASSERT_TRUE(desktop.comesToSee("Accept"));
    tabTo("Accept");
    desktop.press(Qt::Key_Space);
    EXPECT_TRUE(desktop.comesToSee("Now: It passes as it looks"));
}

TEST_F(IndicatorDeskOnScreen, AReadingCheckIsTakenAndRecorded)
{
    cycle = runLoad(desktop, Implant::no);
    openDesk();
    ASSERT_TRUE(desktop.comesToSee("How well do we read?"));
    pressButton("Begin a reading check");
    for (int i = 0; i < 20; ++i) {
        ASSERT_TRUE(desktop.comesToSee(QStringLiteral("%1 of 20").arg(i + 1)));
        QTest::qWait(250); // what is pressed sooner was meant for the one before
        desktop.press(Qt::Key_A);
    }
    EXPECT_TRUE(desktop.waitFor(
        [this] { return desktop.messages().contains("Your reading check is recorded."); }));
}

} // namespace
} // namespace loadwarden::ui_tests
