// The record of a load as a person works, by keys and scanner.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/load_screen.h"
#include "ui/shell/work_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QLabel>
#include <QLineEdit>
#include <QScrollArea>
#include <QScrollBar>

#include <algorithm>
#include <future>
#include <sqlite3.h>

namespace loadwarden::ui_tests {
namespace {

TEST_F(LoadOnScreen, TheWholeJobByKeyboardAlone)
{
    openPage();
    ASSERT_TRUE(desktop.comesToSee("Here stands one load with its verdict"));
    desktop.press(Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Sterilizer"; }));
    ASSERT_TRUE(desktop.comesToSee("A new load or test"));
    pressButton("Reserve its number");
    ASSERT_TRUE(saysSoon("is reserved"));
    ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Label of an item"; }))
        << desktop.focusName().toStdString();
    pressButton("Implant: No implant");
    choose("Packaging", 1);
    choose("Devices inside", 1);
    EXPECT_TRUE(desktop.sees("Inside: device"));
    choose("Indicator outside", 1);
    tabTo("Label of an item");
    desktop.type("I1");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(saysSoon("I1 is in the load: no implant."));
    choose("Chemical indicator in it", 2);
    pressButton("Put the PCD into the load");
    ASSERT_TRUE(saysSoon("The PCD is in the load."));
    settle();

    desktop.clock().set(local("07:00"));
    tabTo("Cycle counter");
    desktop.type("101");
    pressButton("Record the start");
    ASSERT_TRUE(saysSoon("The start is recorded."));
    settle();
    EXPECT_TRUE(desktop.comesToSee("Running since 07:00"));
    desktop.clock().set(local("07:50"));
    pressButton("Record the end");
    ASSERT_TRUE(saysSoon("The end is recorded."));
    settle();
    ASSERT_TRUE(desktop.comesToSee("Quarantine"));

    desktop.clock().set(local("08:30"));
    readPrintout();
    // The PCD had no mark, so it is just the PCD.
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("Outside of I1: Accept"));
    settle();
    pressButton("Read In the PCD");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("In the PCD: Accept"));
    settle();
    unload();
    ASSERT_TRUE(desktop.comesToSee("Verify the readings and"));
    pressButton("Verify the readings and release");
    sign();
    ASSERT_TRUE(saysSoon("is verified and signed: Release."));
    settle();
    EXPECT_EQ(sheet().view().signedAs, Verdict::release);
    EXPECT_EQ(sheet().view().folded.phase, Phase::disposed);
    EXPECT_TRUE(desktop.comesToSee("Signed: Release"));
}

TEST_F(LoadOnScreen, AScannedLabelGoesInAndIsKnownAgainAtUnloading)
{
    openPage();
    desktop.press(Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(desktop.comesToSee("A new load or test"));
    ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Sterilizer"; }));
    pressButton("Reserve its number");
    ASSERT_TRUE(saysSoon("is reserved"));
    settle();
    desktop.scan("SET-0007");
    ASSERT_TRUE(saysSoon("SET-0007 is in the load: implant: not known."));
    settle();
    desktop.scan("SET-0007");
    EXPECT_TRUE(desktop.comesToSee("SET-0007 is in this load already"))
        << desktop.messages().toStdString();
    ASSERT_EQ(sheet().items.size(), 1U);
    desktop.clock().set(local("07:00"));
    pressButton("Record the start");
    ASSERT_TRUE(saysSoon("The start is recorded."));
    settle();
    desktop.clock().set(local("07:50"));
    pressButton("Record the end");
    ASSERT_TRUE(saysSoon("The end is recorded."));
    settle();
    pressButton("Record the unloading");
    EXPECT_TRUE(desktop.comesToSee("SET-0007 went in and is not among what came out"));
    desktop.scan("SET-0007");
    ASSERT_TRUE(saysSoon("SET-0007 came out."));
    pressButton("Record the unloading");
    ASSERT_TRUE(saysSoon("The unloading is recorded."));
}

TEST_F(LoadOnScreen, EachReasonLeadsToItsField)
{
    openLoad();
    pressButton("Go to what settles this: I1: The package has not been fully");
    EXPECT_TRUE(desktop.waitFor([this] { return desktop.focusName().startsWith("I1, Cooled"); }))
        << desktop.focusName().toStdString();
}

TEST_F(LoadOnScreen, AnUnclearAnswerIsReadByASecondPerson)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad();
    pressButton("Read In PCD");
    ASSERT_TRUE(desktop.comesToSee("what do you see?"));
    desktop.press(Qt::Key_U);
    ASSERT_TRUE(saysSoon("In PCD: Unclear"));
    settle();
    desktop.scan("BADGE-3");
    ASSERT_TRUE(desktop.comesToSee("Change of person"));
    desktop.type(QString::fromStdString(secondPin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isVisible() && page()->isUpToDate(); }));
    pressButton("Read In PCD");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("In PCD: Accept"));
    settle();
    EXPECT_EQ(sheet().indicator("ci-p")->readings.size(), 2U);
    EXPECT_TRUE(std::ranges::none_of(sheet().view().decision.findings, [](const Finding& finding) {
        return finding.key == Key::pcdUnclear || finding.key == Key::pcdNotRead;
    }));
}

TEST_F(LoadOnScreen, AnAnswerIsNeverGivenByAKeyThatWasPressedTooSoon)
{
    openLoad();
    pressButton("Read Outside of I1");
    ASSERT_TRUE(desktop.comesToSee("what do you see?"));
    for (const Qt::Key key : {Qt::Key_Space, Qt::Key_Return}) {
        desktop.press(key);
    }
    QTest::qWait(100);
    settle();
    EXPECT_TRUE(sheet().indicator("ci-e")->readings.empty());
    EXPECT_TRUE(desktop.sees("what do you see?"));
    desktop.press(Qt::Key_A);
    EXPECT_TRUE(saysSoon("Outside of I1: Accept"));
}

TEST_F(LoadOnScreen, ACorrectionIsSignedAndStaysInTheHistory)
{
    openLoad(Implant::no, "B-1");
    readPrintout();
    const auto& history = sheet().view().folded.history;
    const auto reading = std::ranges::find_if(sheet().record.entries, [](const Entry& entry) {
        return std::holds_alternative<PrintoutRecorded>(entry.act);
    });
    ASSERT_NE(reading, sheet().record.entries.end());
    const std::int64_t seq = reading->seq;
    ASSERT_FALSE(history.empty());
    // The supervisor typed it: to take it back needs another supervisor.
    pressButton(QStringLiteral("Correct entry %1:").arg(seq));
    ASSERT_TRUE(desktop.comesToSee("Why, or what should be"));
    pressButton(QStringLiteral("Strike entry %1").arg(seq));
    EXPECT_TRUE(desktop.comesToSee("Say why it is struck."));
    desktop.type("of another load");
    pressButton(QStringLiteral("Strike entry %1").arg(seq));
    EXPECT_TRUE(desktop.comesToSee("It is made by a second person"))
        << "said before anybody types a PIN";
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
    EXPECT_EQ(sheet().view().folded.record.load.printout.has_value(), true);
    pressButton(QStringLiteral("Only add the note to entry %1").arg(seq));
    ASSERT_TRUE(saysSoon("The note is recorded."));
    settle();
    EXPECT_TRUE(desktop.comesToSee("of another load"));
}

TEST_F(LoadOnScreen, AReadingOfAnOperatorIsStruckByAHigherRight)
{
    hire(desktop, "st-2", "Operator Three", Role::operating, "BADGE-3", secondPin);
    openLoad(Implant::no, "st-2", secondPin);
    readPrintout();
    const auto entry = std::ranges::find_if(sheet().record.entries, [](const Entry& each) {
        return std::holds_alternative<PrintoutRecorded>(each.act);
    });
    const std::int64_t seq = entry->seq;
    desktop.scan("st-sup");
    ASSERT_TRUE(desktop.comesToSee("Change of person"));
    desktop.type(QString::fromStdString(supervisorPin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isVisible() && page()->isUpToDate(); }));
    pressButton(QStringLiteral("Correct entry %1:").arg(seq));
    ASSERT_TRUE(desktop.comesToSee("Why, or what should be"));
    tabTo("Why, or what should be known");
    desktop.type("of another load");
    pressButton(QStringLiteral("Strike entry %1").arg(seq));
    sign();
    ASSERT_TRUE(saysSoon("The entry is struck."));
    settle();
    EXPECT_FALSE(sheet().view().folded.record.load.printout.has_value());
    const auto labels = desktop.window().findChildren<QLabel*>();
    EXPECT_TRUE(std::ranges::any_of(labels, [](const QLabel* label) {
        return label->isVisible() && label->font().strikeOut() && label->text().contains("101");
    })) << "struck through, not hidden";
}

TEST_F(LoadOnScreen, AStaleSightIsRefusedWithWhatCameIn)
{
    openLoad();
    readPrintout();
    readIndicators();
    unload();
    pressButton("Verify the readings and release");
    dialogIsActive();
    // Somebody else records meanwhile.
    bool isIn = false;
    page()->view()->desk().workstation().desk.ask(
        page(),
        [id = cycle](Office& office) {
            auto who = SignIn(office).enter("B-2", operatorPin);
            return Recorder(office).record(std::get<SignedIn>(who),
                                           {.act = AlarmRecorded{"E7"}, .subjects = {id}});
        },
        [&](const OrRefusal<Appended>& answer) { isIn = std::holds_alternative<Appended>(answer); });
    ASSERT_TRUE(desktop.waitFor([&] { return isIn; }));
    sign();
    EXPECT_TRUE(desktop.comesToSee("Since you looked, this was recorded about the load"));
    leaveDialog();
    desktop.press(Qt::Key_F5);
    settle();
    EXPECT_FALSE(sheet().view().signedAs);
}

TEST_F(LoadOnScreen, WhatIsHalfTypedStaysWhenAnotherLoadIsOpenedAndWhenItLocks)
{
    desktop.setIdleMs(3'600'000);
    openLoad();
    tabTo("Sterilizer printed");
    desktop.type("S1 half");
    desktop.press(Qt::Key_N, Qt::ControlModifier);
    ASSERT_TRUE(desktop.comesToSee("A new load or test"));
    pressButton("Do not reserve");
    ASSERT_TRUE(desktop.waitFor([this] { return page()->view()->isVisible(); }));
    desktop.press(Qt::Key_L, Qt::ControlModifier);
    ASSERT_TRUE(desktop.waitFor([this] { return !page()->isVisible(); }));
    desktop.type(QString::fromStdString(supervisorPin));
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] { return page()->isVisible() && page()->isUpToDate(); }));
    const auto lines = page()->view()->findChildren<QLineEdit*>();
    EXPECT_TRUE(std::ranges::any_of(
        lines, [](const QLineEdit* line) { return line->text() == "S1 half"; }));
}

TEST_F(LoadOnScreen, OfManyLoadsThatWereOpenedThoseWithSomethingTypedStay)
{
    constexpr std::size_t most = 12;
    std::vector<QString> lots;
    desktop.prepare([&](Office& office, const SignedIn& who) {
        for (int i = 0; i < 16; ++i) {
            lots.push_back(QString::fromStdString(
                std::get<ReservedCycle>(
                    reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-1"}))
                    .lot));
        }
    });
    openPage();
    const auto show = [&](const QString& lot) {
        desktop.scan(lot);
        ASSERT_TRUE(desktop.waitFor([&] {
            return page()->view() != nullptr && page()->view()->desk().isUpToDate()
                   && page()->view()->desk().lot() == lot;
        }));
    };
    show(lots.front());
    tabTo("Cycle counter");
    desktop.type("77");
    for (const QString& lot : lots) {
        show(lot);
    }
    QTest::qWait(50);
    const auto views = page()->findChildren<ui::LoadView*>();
    EXPECT_EQ(static_cast<std::size_t>(views.size()), most);
    show(lots.front());
    const auto lines = page()->view()->findChildren<QLineEdit*>();
    EXPECT_TRUE(std::ranges::any_of(lines, [](const QLineEdit* line) {
        return line->text() == "77" && line->isVisible();
    }));
}

TEST_F(LoadOnScreen, WrongFieldsSayWhatWouldBeRight)
{
    openLoad();
    tabTo("Cycle counter printed");
    desktop.type("12a");
    tabTo("Start printed: Time as 07:14");
    desktop.type("7.99");
    tabTo("Temperature");
    desktop.type("hot");
    pressButton("Record what the printout says");
    EXPECT_TRUE(desktop.comesToSee("Type the counter as a whole number."));
    EXPECT_TRUE(desktop.sees("Type the time as 07:14."));
    EXPECT_TRUE(desktop.sees("Type a number with at most three decimals, as 132.4."));
    EXPECT_EQ(desktop.focusName(), "Cycle counter printed") << "the first that is wrong";
    settle();
    EXPECT_FALSE(sheet().view().folded.record.load.printout.has_value());
}

TEST_F(LoadOnScreen, AReadingBeyondItsLimitIsAskedAboutOnceAndThenRecorded)
{
    openLoad();
    tabTo("Temperature");
    desktop.type("123.4");
    pressButton("Record what the printout says");
    ASSERT_TRUE(desktop.comesToSee("Below its limit. Is that what is printed?"));
    settle();
    EXPECT_TRUE(sheet().view().folded.record.load.readings.empty());
    pressButton("Record it as typed");
    ASSERT_TRUE(saysSoon("What the printout says is recorded."));
    settle();
    ASSERT_EQ(sheet().view().folded.record.load.readings.size(), 1U);
    EXPECT_TRUE(desktop.comesToSee("Reprocess"));
}

TEST_F(LoadOnScreen, AReadingThatIsRecordedStandsBesideItsField)
{
    openLoad();
    tabTo("Temperature");
    desktop.type("132.4");
    pressButton("Record what the printout says");
    ASSERT_TRUE(saysSoon("What the printout says is recorded."));
    settle();
    EXPECT_TRUE(desktop.comesToSee("recorded: 132.4 °C; at least 132 °C"));
    EXPECT_FALSE(desktop.sees("recorded: 4 min")) << "it was not read yet";
}

TEST_F(LoadOnScreen, WhatIsBeingWorkedOutIsSaid)
{
    openLoad();
    EXPECT_FALSE(desktop.sees("Working out the decision"));
    // The desk is busy, as with a long journal.
    std::promise<void> goOn;
    page()->view()->desk().workstation().desk.ask(
        page(),
        [wait = goOn.get_future().share()](Office&) {
            wait.wait();
            return 0;
        },
        [](int) {});
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    EXPECT_TRUE(desktop.comesToSee("Working out the decision"));
    goOn.set_value();
    ASSERT_TRUE(saysSoon("Outside of I1: Accept"));
    settle();
    EXPECT_TRUE(desktop.waitFor([this] { return !desktop.sees("Working out the decision"); }));
}

TEST_F(LoadOnScreen, ShownAnewNothingOfItMovesAndTheReasonKeepsTheKeyboard)
{
    openLoad();
    tabTo("Go to what settles this: I1: The package has not been");
    const QString reason = desktop.focusName();
    std::vector<QScrollArea*> scrolls;
    std::vector<int> places;
    for (auto* const scroll : page()->view()->findChildren<QScrollArea*>()) {
        scroll->verticalScrollBar()->setValue(scroll->verticalScrollBar()->maximum() / 2);
        scrolls.push_back(scroll);
        places.push_back(scroll->verticalScrollBar()->value());
    }
    ASSERT_THAT(places, ::testing::Contains(::testing::Gt(0)));
    // Somebody else records, and it is shown anew: at no moment it is shorter.
    bool hasMoved = false;
    for (auto* const scroll : scrolls) {
        QObject::connect(scroll->verticalScrollBar(), &QScrollBar::valueChanged, scroll,
                         [&hasMoved] { hasMoved = true; });
    }
    page()->view()->desk().record(PackageChecked{.dry = true}, {"it-1"}, "Checked.");
    ASSERT_TRUE(saysSoon("Checked."));
    settle();
    EXPECT_EQ(desktop.focusName(), reason);
    EXPECT_FALSE(hasMoved);
    for (std::size_t i = 0; i < scrolls.size(); ++i) {
        scrolls[i]->verticalScrollBar()->disconnect(scrolls[i]);
        EXPECT_EQ(scrolls[i]->verticalScrollBar()->value(), places[i]);
    }
}

TEST_F(LoadOnScreen, WhatIsWrongWithATimeIsSaidAtTheTime)
{
    openLoad();
    pressButton("Done earlier, or on paper");
    ASSERT_TRUE(desktop.waitFor(
        [this] { return desktop.focusName().startsWith("When it happened: Time"); }));
    desktop.type("07:10"); // before the cycle ended
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(desktop.comesToSee("had not ended yet"));
    settle();
    EXPECT_TRUE(desktop.focusName().startsWith("When it happened: Time"))
        << desktop.focusName().toStdString();
    EXPECT_TRUE(sheet().indicator("ci-e")->readings.empty());
}

TEST_F(LoadOnScreen, OfAnOldDayEachEntrySaysItsDay)
{
    openLoad();
    EXPECT_TRUE(desktop.sees("Supervisor One, 07:50"));
    desktop.clock().set(local("08:30", "2031-03-06"));
    desktop.press(Qt::Key_F5);
    settle();
    EXPECT_TRUE(desktop.comesToSee("Supervisor One, 4 Mar 2031 07:50"));
    EXPECT_FALSE(desktop.sees("Supervisor One, 07:50"));
}

TEST_F(LoadOnScreen, WhatCameInAfterTheSignatureIsNamed)
{
    openLoad(Implant::yes);
    pressButton("Sign a hold");
    sign();
    ASSERT_TRUE(saysSoon("is signed: Quarantine."));
    settle();
    EXPECT_FALSE(desktop.sees("Recorded since it was signed"));
    pressButton("Read Outside of I1");
    desktop.press(Qt::Key_A);
    ASSERT_TRUE(saysSoon("Outside of I1: Accept"));
    settle();
    EXPECT_TRUE(desktop.comesToSee("Recorded since it was signed"));
    EXPECT_TRUE(desktop.sees("Supervisor One, 08:30"));
}

TEST_F(LoadOnScreen, AnEndTypedInTheMinuteOfTheStartIsRecorded)
{
    desktop.prepare([this](Office& office, const SignedIn& who) {
        cycle = std::get<ReservedCycle>(
                    reserveCycle(office, who, {.sterilizer = "sz-1", .specification = "sp-1"}))
                    .cycle;
        desktop.clock().set(local("07:00:40"));
        (void)Recorder(office).record(
            who, {.act = CycleStarted{ClockSource::facility, {local("07:00:40"), -360}, 101},
                  .subjects = {cycle}});
    });
    desktop.clock().set(local("07:05"));
    openPage();
    ASSERT_TRUE(desktop.window().work()->openCycle(QString::fromStdString(cycle), {}));
    settle();
    tabTo("End: Time");
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type("07:00");
    pressButton("How the cycle ended: Aborted");
    pressButton("Record the end");
    EXPECT_TRUE(saysSoon("The end is recorded.")) << desktop.messages().toStdString();
}

TEST_F(LoadOnScreen, ForPaperTheWindowNeedsNoMoreRoomThanItHas)
{
    openLoad();
    desktop.window().showMaximized();
    QTest::qWait(50);
    const QSize size = desktop.window().size();
    pressButton("Done earlier, or on paper");
    pressButton("Paper");
    ASSERT_TRUE(desktop.comesToSee("To this file"));
    QTest::qWait(50);
    EXPECT_TRUE(desktop.window().isMaximized());
    EXPECT_EQ(desktop.window().size(), size);
    const QSize least = desktop.window().minimumSizeHint();
    EXPECT_LE(least.width(), 1366);
    EXPECT_LE(least.height(), 690);
}

TEST_F(LoadOnScreen, NothingIsSignedWhereTheJournalCannotBeWritten)
{
    openLoad();
    readPrintout();
    readIndicators();
    unload();
    sqlite3* other = nullptr;
    ASSERT_EQ(sqlite3_open(desktop.file().toUtf8().constData(), &other), SQLITE_OK);
    ASSERT_EQ(sqlite3_exec(other, "BEGIN IMMEDIATE", nullptr, nullptr, nullptr), SQLITE_OK);
    pressButton("Verify the readings and release");
    sign();
    EXPECT_TRUE(desktop.comesToSee("Nothing was signed: the journal could not be written."));
    ASSERT_EQ(sqlite3_exec(other, "ROLLBACK", nullptr, nullptr, nullptr), SQLITE_OK);
    sqlite3_close(other);
    desktop.press(Qt::Key_Return); // the PIN still stands there
    EXPECT_TRUE(saysSoon("is verified and signed: Release."));
}

TEST_F(LoadOnScreen, AHoldIsSignedAndTheImplantIsReleasedInAnEmergencyOnly)
{
    openLoad(Implant::yes);
    pressButton("Sign a hold");
    sign();
    ASSERT_TRUE(saysSoon("is signed: Quarantine."));
    settle();
    EXPECT_EQ(sheet().view().signedAs, Verdict::quarantine);
    pressButton("Emergency release of an implant");
    ASSERT_TRUE(desktop.comesToSee("Only where the case cannot wait"));
    pressButton("Sign the emergency release");
    EXPECT_TRUE(desktop.comesToSee("This is needed for the record."));
    for (const char* const field :
         {"Reference of the case", "Demanded by", "Why it cannot wait", "What would have prevented it"}) {
        tabTo(field);
        desktop.type("words");
    }
    pressButton("Sign the emergency release");
    sign();
    // Readings are missing, too: only what waits for the vial is overruled.
    EXPECT_TRUE(desktop.comesToSee("In an emergency only the missing answer of a vial is overruled"));
}

} // namespace
} // namespace loadwarden::ui_tests
