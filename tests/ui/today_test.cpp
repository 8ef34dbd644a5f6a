// A need on Today leads to where it is settled.
#include "tests/ui/load_screen.h"
#include "ui/shell/work_view.h"
#include "ui/today/need_row.h"

#include <gmock/gmock.h>

#include <QPushButton>

namespace loadwarden::ui_tests {
namespace {

class TodayOnScreen : public LoadOnScreen {
protected:
    void openToday()
    {
        desktop.open();
        desktop.signIn();
    }

    /// Presses the action of the first need whose button is called so.
    void act(const QString& action)
    {
        QPushButton* button = nullptr;
        ASSERT_TRUE(desktop.waitFor([&] {
            for (const auto* const row : desktop.window().findChildren<ui::NeedRow*>()) {
                if (row->isVisible() && row->action()->accessibleName().startsWith(action)) {
                    button = row->action();
                }
            }
            return button != nullptr;
        })) << action.toStdString();
        button->setFocus();
        desktop.press(Qt::Key_Space);
        ASSERT_TRUE(desktop.waitFor([this] { return desktop.window().work()->area() != 0; }));
    }
};

TEST_F(TodayOnScreen, APrintoutThatIsMissingIsAskedForInItsSection)
{
    cycle = runLoad(desktop);
    openToday();
    act("Complete it: Printout incomplete");
    settle();
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Sterilizer printed"; }))
        << desktop.focusName().toStdString();
}

TEST_F(TodayOnScreen, WhatIsReadyIsSignedAtOnce)
{
    openLoad();
    readPrintout();
    readIndicators();
    unload();
    pressButton("Verify: sign that the record");
    sign();
    ASSERT_TRUE(saysSoon("The physical record is verified."));
    settle();
    desktop.press(Qt::Key_1, Qt::ControlModifier);
    ASSERT_TRUE(desktop.comesToSee("Ready to sign"));
    act("Sign it");
    settle();
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Sign the release"; }))
        << desktop.focusName().toStdString();
}

TEST_F(TodayOnScreen, TheDashedBarOfWhatNobodySignedIsExplained)
{
    openToday();
    EXPECT_TRUE(desktop.sees("Not signed"));
}

} // namespace
} // namespace loadwarden::ui_tests
