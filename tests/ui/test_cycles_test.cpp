// Test cycles, a load for immediate use, and a review, on the page by keys.
#include "tests/ui/load_screen.h"
#include "tests/ui/recording.h"

namespace loadwarden::ui_tests {
namespace {

class CyclesOnScreen : public LoadOnScreen {
protected:
    /// Opens what stands first in the list: it is to be settled.
    void openFirst()
    {
        openPage();
        ASSERT_TRUE(desktop.waitFor([this] { return page()->isUpToDate(); }));
        tabTo("Loads and tests at hand");
        desktop.press(Qt::Key_Return);
        ASSERT_TRUE(desktop.waitFor(
            [this] { return page()->view() != nullptr && page()->view()->desk().isUpToDate(); }));
        ASSERT_EQ(page()->view()->desk().cycle(), cycle);
    }

    TestResult result() { return sheet().view().judgement.result; }
};

TEST_F(CyclesOnScreen, ABowieDickTestIsReadAndPasses)
{
    cycle = runTest(desktop, Purpose::bowieDick);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    EXPECT_EQ(result(), TestResult::pending);
    pressButton("Chamber empty but for the test: Yes");
    pressButton("Drying was run: No");
    tabTo("Exposure in minutes");
    desktop.type("three");
    pressButton("Record the conditions");
    ASSERT_TRUE(desktop.comesToSee("Type a number, as 3.5."));
    ASSERT_TRUE(
        desktop.waitFor([this] { return desktop.focusName().startsWith("Exposure in minutes"); }));
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type("3.5");
    tabTo("Exposure temperature in °C");
    desktop.type("134");
    pressButton("Record the conditions");
    ASSERT_TRUE(saysSoon("The conditions of the test are recorded."));
    settle();
    pressButton("Read Test sheet");
    ASSERT_TRUE(desktop.comesToSee("what do you see?"));
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("Accept"));
    settle();
    EXPECT_EQ(result(), TestResult::passed);
    EXPECT_TRUE(desktop.sees("Passed"));
}

TEST_F(CyclesOnScreen, ABowieDickSheetThatIsNotUniformFailsTheTest)
{
    cycle = runTest(desktop, Purpose::bowieDick);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    pressButton("Read Test sheet");
    ASSERT_TRUE(desktop.comesToSee("what do you see?"));
    desktop.press(Qt::Key_R);
    ASSERT_TRUE(saysSoon("Reject"));
    settle();
    EXPECT_EQ(result(), TestResult::failed);
    EXPECT_TRUE(desktop.sees("Failed"));
}

TEST_F(CyclesOnScreen, ALeakTestIsMeasuredAndFails)
{
    cycle = runTest(desktop, Purpose::leak);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    tabTo("Settling in minutes");
    desktop.type("5");
    tabTo("Measured for minutes");
    desktop.type("10");
    pressButton("Record the leak test");
    ASSERT_TRUE(desktop.comesToSee("Type by how much the pressure rose."));
    ASSERT_TRUE(desktop.waitFor(
        [this] { return desktop.focusName().startsWith("Pressure rise in mbar"); }));
    desktop.type("25"); // 2.5 mbar a minute; the limit is 1.3
    pressButton("Record the leak test");
    ASSERT_TRUE(saysSoon("The leak test is recorded."));
    settle();
    EXPECT_EQ(result(), TestResult::failed);
    EXPECT_TRUE(desktop.sees("recorded: 25"));
}

TEST_F(CyclesOnScreen, WhyALoadCouldNotWaitIsRecordedOnItsPage)
{
    cycle = runLoad(desktop, Implant::no, Purpose::immediateUse);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    pressButton("Record it");
    ASSERT_TRUE(desktop.comesToSee("Type why the items could not wait for a routine cycle."));
    ASSERT_TRUE(desktop.waitFor(
        [this] { return desktop.focusName().startsWith("Why it could not wait"); }));
    desktop.type("the only set was dropped");
    tabTo("Reference of the case");
    desktop.type("case 7");
    pressButton("Is anything of it meant for storage: For use at once");
    pressButton("Record it");
    ASSERT_TRUE(saysSoon("The reason for immediate use is recorded."));
    settle();
    const auto& said = sheet().view().folded.record.load.immediateUse;
    ASSERT_TRUE(said.has_value());
    EXPECT_EQ(said->reason, "the only set was dropped");
    EXPECT_EQ(said->caseReference, "case 7");
    EXPECT_EQ(said->forStorage, false);
    EXPECT_TRUE(desktop.sees("recorded: case 7"));
}

TEST_F(CyclesOnScreen, APrintoutOfAnotherCycleIsAnswered)
{
    cycle = runLoad(desktop);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    tabTo("Cycle counter printed");
    desktop.type("102"); // the load has 101
    pressButton("Record what the printout says");
    ASSERT_TRUE(saysSoon("What the printout says is recorded."));
    settle();
    ASSERT_TRUE(desktop.sees("printed is not that of the record."));
    pressButton("Another cycle's printout");
    ASSERT_NO_FATAL_FAILURE(sign());
    ASSERT_TRUE(desktop.waitFor([] { return QApplication::activeModalWidget() == nullptr; }));
    QApplication::setActiveWindow(&desktop.window());
    settle();
    // It waits for the right printout; that this one is another's is signed.
    EXPECT_TRUE(std::ranges::any_of(sheet().record.entries, [](const Entry& entry) {
        const auto* const answered = std::get_if<PrintoutAnswered>(&entry.act);
        return answered != nullptr && answered->answer == PrintoutAnswer::wrongCycle;
    }));
    EXPECT_NE(sheet().view().decision.verdict, Verdict::release);
}

TEST_F(CyclesOnScreen, ASaturationThatIsNotThereIsReviewedAndSigned)
{
    cycle = runLoad(desktop);
    openFirst();
    ASSERT_FALSE(HasFatalFailure());
    const QTemporaryDir folder;
    lookAtRecording(
        writeRecording(folder, {{.kind = simulation::FaultKind::residualAir, .size = 4}}));
    ASSERT_NO_FATAL_FAILURE(confirmRecording());
    ASSERT_NO_FATAL_FAILURE(attachRecording());
    const auto reviews = [this] {
        return std::ranges::count_if(sheet().view().decision.findings, [](const Finding& finding) {
            return finding.key == Key::traceNotSaturated && finding.outcome == Outcome::review;
        });
    };
    ASSERT_EQ(reviews(), 1);
    pressButton("Review: ");
    ASSERT_TRUE(desktop.comesToSee("Isolated: it concerns this alone"));
    pressButton("Sign the review");
    ASSERT_TRUE(desktop.comesToSee("Choose whether it is isolated."));
    pressButton("Answer: Isolated");
    tabTo("Why");
    desktop.type("a sensor out of calibration, replaced");
    pressButton("Sign the review");
    sign();
    ASSERT_TRUE(saysSoon("The review is signed."));
    settle();
    EXPECT_EQ(reviews(), 0);
}

} // namespace
} // namespace loadwarden::ui_tests
