// From nothing to a department that works, by keys.
#include "core/desk/today.h"
#include "tests/ui/desktop.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QLineEdit>

namespace loadwarden::ui_tests {
namespace {

/// Goes on with Tab until what has the keyboard is called so.
void goTo(Desktop& desktop, const QString& name)
{
    for (int i = 0; i < 40 && desktop.focusName() != name; ++i) {
        desktop.press(Qt::Key_Tab);
    }
    ASSERT_EQ(desktop.focusName(), name);
}

void replace(Desktop& desktop, const QString& name, const QString& text)
{
    goTo(desktop, name);
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type(text);
}

TEST(FirstStart, SaysAtTheFieldsWhatIsMissing)
{
    Desktop desktop;
    desktop.openFirst();
    desktop.click("Next");
    EXPECT_TRUE(desktop.sees("Type the name of the facility."));
    replace(desktop, "Facility", "F");
    replace(desktop, "Time zone of the facility", "Nowhere/Here");
    replace(desktop, "Atmospheric pressure here, in kPa", "1013");
    desktop.click("Next");
    EXPECT_FALSE(desktop.sees("Type the name of the facility."));
    EXPECT_TRUE(desktop.sees("no zone of that name"));
    EXPECT_TRUE(desktop.sees("from 50 to 110"));
}

TEST(FirstStart, FoundsAJournalWithASupervisorAndASterilizer)
{
    Desktop desktop;
    desktop.openFirst();
    replace(desktop, "Facility", "Facility");
    replace(desktop, "Time zone of the facility", "America/Chicago");
    desktop.click("Next");
    ASSERT_TRUE(desktop.sees("The first supervisor"));
    replace(desktop, "Name", "Supervisor");
    replace(desktop, "PIN", "482915");
    replace(desktop, "PIN once more", "482916");
    desktop.click("Next");
    EXPECT_TRUE(desktop.sees("The two are not the same."));
    replace(desktop, "PIN once more", "482915");
    desktop.click("Next");
    ASSERT_TRUE(desktop.sees("Your sterilizers"));
    desktop.click("Add a sterilizer");
    desktop.click("Begin the journal");
    EXPECT_TRUE(desktop.sees("Type its name, or take it away."));
    replace(desktop, "Name on the printout", "S1");
    desktop.click("It is qualified and in service");
    desktop.click("Begin the journal");
    ASSERT_TRUE(desktop.comesToSee("Who works here now?")) << desktop.messages().toStdString();
    desktop.signIn("Supervisor", "482915");
    EXPECT_TRUE(desktop.comesToSee("S1"));
    EXPECT_TRUE(desktop.comesToSee("Nothing needs anybody now."));
}

} // namespace
} // namespace loadwarden::ui_tests
