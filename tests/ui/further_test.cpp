// What is seldom recorded of a load, and what was done before it is recorded.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/load_screen.h"

#include <gmock/gmock.h>

#include <QComboBox>

#include <algorithm>

namespace loadwarden::ui_tests {
namespace {

class FurtherOnScreen : public LoadOnScreen {
protected:
    /// Goes down in a combo box to the entry that begins so.
    void chooseNamed(const QString& combo, const QString& entry)
    {
        tabTo(combo);
        const auto* const box = qobject_cast<QComboBox*>(QApplication::focusWidget());
        ASSERT_NE(box, nullptr);
        desktop.press(Qt::Key_Home);
        for (int i = 0; i < box->count() && !box->currentText().startsWith(entry); ++i) {
            desktop.press(Qt::Key_Down);
        }
        ASSERT_TRUE(box->currentText().startsWith(entry)) << box->currentText().toStdString();
        QTest::qWait(20);
    }

    template <class Said>
    const Entry* said()
    {
        const auto found = std::ranges::find_if(sheet().record.entries, [](const Entry& entry) {
            return std::holds_alternative<Said>(entry.act);
        });
        return found == sheet().record.entries.end() ? nullptr : &*found;
    }
};

TEST_F(FurtherOnScreen, AnItemGoesIntoAnotherLoadByItsNumber)
{
    std::string other;
    QString lot;
    desktop.prepare([&](Office& office, const SignedIn& who) {
        const auto reserve = [&] {
            return std::get<ReservedCycle>(
                reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-1"}));
        };
        other = reserve().lot;
        const ReservedCycle reserved = reserve();
        cycle = reserved.cycle;
        lot = QString::fromStdString(reserved.lot);
        ItemAdded item{.label = "I1", .implant = Implant::no, .packaging = "pk-1"};
        (void)Recorder(office).record(who, {.act = item, .subjects = {"it-1", cycle}});
    });
    openPage();
    desktop.scan(lot);
    ASSERT_TRUE(desktop.waitFor(
        [this] { return page()->view() != nullptr && page()->view()->desk().isUpToDate(); }));
    ASSERT_EQ(sheet().items.size(), 1U);
    chooseNamed("What else happened", "An item goes");
    pressButton("Move the item");
    EXPECT_TRUE(desktop.comesToSee("Type it, or scan it."));
    desktop.type("1-2-3");
    tabTo("Why");
    desktop.type("cart was full");
    pressButton("Move the item");
    EXPECT_TRUE(desktop.comesToSee("No load or test has this number."));
    settle();
    EXPECT_EQ(sheet().items.size(), 1U);
    tabTo("Lot control number of the other load");
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type(QString::fromStdString(other));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("Recorded: An item goes into another load."))
        << desktop.messages().toStdString();
    settle();
    EXPECT_TRUE(sheet().items.empty());
}

TEST_F(FurtherOnScreen, ASecondLookAtAnIndicatorIsSignedAndBothStand)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad(Implant::no, "st-2", secondPin);
    readIndicators();
    chooseNamed("What else happened", "Somebody else reads");
    chooseNamed("What is seen", "Reject: end colour");
    tabTo("Why it is read once more");
    desktop.type("looked pale");
    pressButton("Sign the reading");
    sign(secondPin);
    ASSERT_TRUE(saysSoon("Recorded: Somebody else reads")) << desktop.messages().toStdString();
    settle();
    const SheetIndicator& outside = *sheet().indicator("ci-e");
    ASSERT_EQ(outside.readings.size(), 2U);
    EXPECT_EQ(outside.readings.back().seen, Seen::endColourPartly);
    EXPECT_TRUE(desktop.comesToSee("Reprocess"));
}

TEST_F(FurtherOnScreen, WhatNeedsAHigherRightIsSaidBeforeAPin)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad(Implant::no, "st-2", secondPin);
    chooseNamed("What else happened", "What was done about");
    chooseNamed("The cause", "It is known");
    chooseNamed("What it reached", "This load");
    tabTo("The cause, and what was done");
    desktop.type("gasket renewed");
    pressButton("Sign what was done");
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.messages().contains("lead"); }))
        << desktop.messages().toStdString();
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_EQ(said<FailureResolved>(), nullptr);
}

TEST_F(FurtherOnScreen, WhatIsNotAnsweredIsAskedAndTheFirstChoiceIsNone)
{
    openLoad();
    chooseNamed("What else happened", "The process failed");
    pressButton("Record the failure");
    EXPECT_TRUE(desktop.comesToSee("Choose one."));
    settle();
    EXPECT_EQ(said<FailureRecorded>(), nullptr);
    chooseNamed("What failed", "The physical");
    pressButton("Record the failure");
    ASSERT_TRUE(saysSoon("Recorded: The process failed."));
    settle();
    EXPECT_NE(said<FailureRecorded>(), nullptr);
}

TEST_F(FurtherOnScreen, AReadingFromPaperStandsAsOfWhoSignedThereAndWhen)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad();
    pressButton("Done earlier, or on paper");
    ASSERT_TRUE(desktop.waitFor([this] {
        return desktop.focusName().startsWith("When it happened: Time");
    })) << desktop.focusName().toStdString();
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    EXPECT_TRUE(desktop.waitFor([this] {
        return desktop.messages().contains("It is not recorded yet.");
    })) << "without a time nothing is recorded";
    tabTo("When it happened: Time");
    desktop.type("08:05");
    chooseNamed("Who did it", "Operator Three");
    tabTo("Accept end colour reached");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("Outside of I1: Accept")) << desktop.messages().toStdString();
    settle();
    const Entry* const reading = said<ChemicalRead>();
    ASSERT_NE(reading, nullptr);
    ASSERT_TRUE(reading->paper);
    EXPECT_EQ(reading->paper->by, "st-2");
    EXPECT_EQ(reading->happenedAt.at, local("08:05"));
    EXPECT_EQ(reading->happenedFrom, TimeSource::typed);
    EXPECT_EQ(reading->actor, "st-sup") << "who typed it";
    pressButton("Back to now");
    pressButton("Read In PCD");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("In PCD: Accept"));
    settle();
    const auto& entries = sheet().record.entries;
    const auto newest = std::ranges::find_if(entries, [](const Entry& entry) {
        return std::holds_alternative<ChemicalRead>(entry.act) && entry.isAbout("ci-p");
    });
    ASSERT_NE(newest, entries.end());
    EXPECT_FALSE(newest->paper);
    EXPECT_EQ(newest->happenedAt.at, local("08:30"));
}

TEST_F(FurtherOnScreen, WhatWasEarlierForOneIsNotForWhoComesNext)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad();
    pressButton("Done earlier, or on paper");
    ASSERT_TRUE(desktop.waitFor(
        [this] { return desktop.focusName().startsWith("When it happened: Time"); }));
    desktop.type("08:05");
    desktop.scan("BADGE-3");
    ASSERT_TRUE(desktop.comesToSee("Change of person"));
    desktop.type(QString::fromStdString(secondPin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isVisible() && page()->isUpToDate(); }));
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("Outside of I1: Accept")) << desktop.messages().toStdString();
    settle();
    ASSERT_NE(said<ChemicalRead>(), nullptr);
    EXPECT_EQ(said<ChemicalRead>()->happenedAt.at, local("08:30"));
}

TEST_F(FurtherOnScreen, AReleasedItemGoesOutIsUsedAndItsWayIsKept)
{
    openLoad();
    readPrintout();
    readIndicators();
    unload();
    pressButton("Verify the readings and release");
    sign();
    ASSERT_TRUE(saysSoon("is verified and signed: Release."));
    settle();
    chooseNamed("What else happened", "An item leaves");
    tabTo("To whom");
    desktop.type("ward 3");
    pressButton("Record where it went");
    ASSERT_TRUE(saysSoon("Recorded: An item leaves the department."));
    settle();
    chooseNamed("What else happened", "An item was used");
    tabTo("Reference of the case");
    desktop.type("C-17");
    pressButton("Record the use");
    ASSERT_TRUE(saysSoon("Recorded: An item was used."));
    settle();
    ASSERT_NE(said<ItemUsed>(), nullptr);
    EXPECT_EQ(std::get<ItemUsed>(said<ItemUsed>()->act).caseReference, "C-17");
}

} // namespace
} // namespace loadwarden::ui_tests
