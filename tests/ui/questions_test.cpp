// Questions from the floor, asked by keys and by a scanner.
#include "tests/ui/load_screen.h"
#include "ui/questions/questions_page.h"

namespace loadwarden::ui_tests {
namespace {

class QuestionsOnScreen : public LoadOnScreen {
protected:
    void openQuestions()
    {
        desktop.open();
        desktop.signIn();
        desktop.press(Qt::Key_5, Qt::ControlModifier);
        ASSERT_TRUE(desktop.comesToSee("Questions from the floor"));
    }

    void ask(const QString& question)
    {
        desktop.type(question);
        desktop.press(Qt::Key_Return);
    }
};

TEST_F(QuestionsOnScreen, WordsFindTheTopicAndItsNeighboursAreOneKeyAway)
{
    openQuestions();
    ask("the front has only just entered the accept zone");
    ASSERT_TRUE(desktop.comesToSee("It need not fill the zone"));
    EXPECT_TRUE(desktop.sees("What to do now"));
    EXPECT_TRUE(desktop.sees("Source: common practice, no source"));
    EXPECT_TRUE(desktop.sees("Decided: Release")) << "by the rules, on a small example";
    pressButton("The front of the indicator stands exactly on the line");
    ASSERT_TRUE(desktop.comesToSee("The front of the indicator stands exactly on the line"));
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.focusName().contains("label of a tray"); }))
        << desktop.focusName().toStdString();
}

TEST_F(QuestionsOnScreen, AnEmptyQuestionAndOneOfNoTopicAreSaid)
{
    openQuestions();
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Type a question, or the label of a tray."));
    ask("xqzzt vrrk");
    EXPECT_TRUE(desktop.comesToSee("No topic has these words"));
    EXPECT_FALSE(desktop.sees("May not be used")) << "two words are no label";
}

TEST_F(QuestionsOnScreen, ALabelThatNobodyKnowsIsNotUsed)
{
    openQuestions();
    ask("TRAY-77");
    EXPECT_TRUE(desktop.comesToSee("No item with this label is in the journal."));
    EXPECT_TRUE(desktop.sees("May not be used"));
}

TEST_F(QuestionsOnScreen, ALabelSaysWhetherItsTrayMayBeUsed)
{
    cycle = runLoad(desktop, Implant::no);
    openQuestions();
    desktop.scan("I1");
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    EXPECT_TRUE(desktop.sees("Leave it where it is held."));
    pressButton("Open the load");
    EXPECT_TRUE(desktop.waitFor([this] { return page() != nullptr && page()->isVisible(); }));
}

TEST_F(QuestionsOnScreen, AReportFromTheFloorHoldsTheTrayAndTheLeadSeesIt)
{
    cycle = runLoad(desktop, Implant::no);
    openQuestions();
    desktop.scan("I1");
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    pressButton("Report what was found on opening");
    ASSERT_TRUE(desktop.comesToSee("What was found on opening I1"));
    pressButton("Record the report");
    EXPECT_TRUE(desktop.comesToSee("Say what was found"));
    EXPECT_TRUE(desktop.sees("Say where it was found."));
    desktop.press(Qt::Key_Down); // on the indicator: the first that is no pass
    tabTo("Where it was found");
    desktop.type("Room 4");
    pressButton("Record the report");
    ASSERT_TRUE(desktop.comesToSee("The report on I1 is recorded"));
    ASSERT_TRUE(desktop.comesToSee("May not be used"));
    pressButton("Open the load");
    ASSERT_TRUE(desktop.waitFor([this] {
        return page() != nullptr && page()->view() != nullptr && page()->view()->desk().isUpToDate();
    }));
    const auto& entries = sheet().record.entries;
    const auto report = std::ranges::find_if(entries, [](const Entry& entry) {
        return std::holds_alternative<ItemReported>(entry.act);
    });
    ASSERT_NE(report, entries.end());
    const auto& said = std::get<ItemReported>(report->act);
    EXPECT_EQ(said.indicator, Seen::frontShortOfBoundary);
    EXPECT_EQ(said.place, "Room 4");
}

TEST_F(QuestionsOnScreen, AQuestionIsLoggedAndCounted)
{
    openQuestions();
    ask("the front has only just entered the accept zone");
    ASSERT_TRUE(desktop.comesToSee("Log this question"));
    pressButton("Log it");
    ASSERT_TRUE(desktop.comesToSee("Say from where it was asked."));
    desktop.type("Room 4");
    pressButton("Something had been misread");
    pressButton("Log it");
    ASSERT_TRUE(desktop.comesToSee("The question from Room 4 is logged."));
    EXPECT_FALSE(desktop.sees("Log this question"));
}

} // namespace
} // namespace loadwarden::ui_tests
