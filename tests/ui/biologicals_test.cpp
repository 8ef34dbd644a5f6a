// The implant's vial over night, an early reading, a positive, a dead control.
#include "core/desk/recorder.h"
#include "core/desk/reservations.h"
#include "tests/ui/desktop.h"
#include "ui/biologicals/biologicals_page.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QApplication>
#include <QSignalSpy>
#include <QTest>

#include <algorithm>

namespace loadwarden::ui_tests {
namespace {

JournalTime shown(const std::string& time)
{
    return {local(time), -360};
}

class BiologicalsOnScreen : public ::testing::Test {
protected:
    BiologicalsOnScreen() { desktop.found(); }

    /// A load with an implant and a vial that ran from 07:00 to 07:50; now it is 08:35.
    void runLoad()
    {
        desktop.clock().set(local("06:30"));
        desktop.prepare([this](Office& office, const SignedIn& who) {
            registers(office, who);
            const auto reserved =
                reserveCycle(office, who, {.sterilizer = "sz-1", .method = Method::steam});
            const auto& cycle = std::get<ReservedCycle>(reserved);
            lot = QString::fromStdString(cycle.lot);
            const auto say = [&](AnyAct act, std::vector<std::string> subjects) {
                must(Recorder(office).record(
                    who, {.act = std::move(act), .subjects = std::move(subjects)}));
            };
            say(ItemAdded{.label = "I1", .implant = Implant::yes}, {"it-1", cycle.cycle});
            say(PcdPlaced{"PCD", {}, {{"bv-1", "pr-4", "pl-4", {}}}},
                {"pd-1", cycle.cycle, "bv-1"});
            desktop.clock().set(local("07:00"));
            say(CycleStarted{ClockSource::facility, shown("07:00"), 101}, {cycle.cycle});
            desktop.clock().set(local("07:50"));
            say(CycleEnded{shown("07:50"), CycleOutcome::ended, {}, {}}, {cycle.cycle});
        });
        desktop.clock().set(local("08:35"));
    }

    /// Vial and control in the incubator at 08:35.
    void incubate()
    {
        desktop.prepare([](Office& office, const SignedIn& who) {
            std::string cycle;
            {
                ReadSnapshot snapshot(office.connection());
                cycle = biologicalsOf(snapshot, office.entries(), office.now())
                            .groups.at(0)
                            .vials.at(0)
                            .cycle;
            }
            const ToRecord acts[] = {
                {.act = ControlPrepared{"pr-4", "pl-4", {}}, .subjects = {"bc-1"}},
                {.act = BiologicalActivated{}, .subjects = {"bc-1"}},
                {.act = BiologicalIncubated{}, .subjects = {"bc-1", "in-1"}},
                {.act = BiologicalActivated{}, .subjects = {"bv-1", cycle}},
                {.act = BiologicalIncubated{}, .subjects = {"bv-1", cycle, "in-1"}}};
            must(Recorder(office).record(who, acts));
        });
    }

    void openPage()
    {
        desktop.open();
        desktop.signIn();
        desktop.press(Qt::Key_3, Qt::ControlModifier);
        ASSERT_TRUE(desktop.waitFor([this] { return page() != nullptr && page()->isUpToDate(); }));
    }

    /// Waits for it: what was just shown anew is seen a moment later.
    void click(const QString& name)
    {
        ASSERT_TRUE(desktop.waitFor([&] {
            const auto buttons = desktop.window().findChildren<QAbstractButton*>();
            return std::ranges::any_of(buttons, [&](const QAbstractButton* button) {
                return button->isVisible() && button->accessibleName() == name;
            });
        })) << name.toStdString();
        desktop.click(name);
    }

    ui::BiologicalsPage* page() { return desktop.window().findChild<ui::BiologicalsPage*>(); }

    template <class Answer>
    static void must(const Answer& answer)
    {
        if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
            throw std::logic_error("refused " + std::to_string(static_cast<int>(refusal->why)) + ' '
                                   + refusal->subject + refusal->detail);
        }
    }

    Desktop desktop;
    QString lot;

private:
    static void registers(Office& office, const SignedIn& who)
    {
        IndicatorProduct vial{.kind = IndicatorKind::biological,
                              .response = Response::growth,
                              .species = Species::geobacillusStearothermophilus,
                              .releaseMinutes = 1'440,
                              .needsActivation = true};
        vial.methods.add(Method::steam);
        const ToRecord acts[] = {
            {.act = SterilizerRecorded{.name = "S1", .model = "M1"}, .subjects = {"sz-1"}},
            {.act = ProductRecorded{"Vial 24", vial}, .subjects = {"pr-4"}},
            {.act = ProductLotRecorded{"N4", parseDate("2032-01-01")},
             .subjects = {"pl-4", "pr-4"}},
            {.act = IncubatorRecorded{"Block A"}, .subjects = {"in-1"}},
            {.act = SterilizerReturned{"installed"}, .subjects = {"sz-1"}}};
        for (const ToRecord& act : acts) {
            auto signature = SignIn(office).sign(who, supervisorPin);
            must(Recorder(office).record(who, act, std::get<Signature>(std::move(signature))));
        }
    }
};

TEST_F(BiologicalsOnScreen, TheImplantsVialOverNight)
{
    runLoad();
    openPage();
    click("Activated: Vial of " + lot);
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Let it cool first"));
    desktop.press(Qt::Key_Space);
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Without its medium nothing can grow"));
    desktop.press(Qt::Key_Space);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("To be put into an incubator"));
    EXPECT_TRUE(
        desktop.waitFor([&] { return desktop.focusName().startsWith("In the incubator"); }));
    desktop.press(Qt::Key_Space);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("in 24 h"));
    EXPECT_TRUE(desktop.sees("No control is beside them"));
    EXPECT_TRUE(desktop.sees("Implant, held until read"));

    click("Prepare a control of lot N4");
    click("Activated: Control, lot N4");
    desktop.press(Qt::Key_Space);
    desktop.press(Qt::Key_Return);
    click("In the incubator: Control, lot N4");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([&] { return !desktop.sees("No control is beside them"); }));

    QSignalSpy rings(&page()->chime(), &ui::Chime::rang);
    desktop.clock().set(local("08:35", "2031-03-05"));
    desktop.press(Qt::Key_F5);
    ASSERT_TRUE(desktop.waitFor([&] { return rings.count() == 1; }));
}

TEST_F(BiologicalsOnScreen, DueVialsRingOnceAndAreReadByTwoKeys)
{
    runLoad();
    incubate();
    openPage();
    ASSERT_TRUE(desktop.comesToSee("in 24 h"));
    QSignalSpy rings(&page()->chime(), &ui::Chime::rang);
    desktop.clock().set(local("08:36", "2031-03-05"));
    desktop.press(Qt::Key_F5);
    ASSERT_TRUE(desktop.comesToSee("To be read since"));
    EXPECT_EQ(rings.count(), 1);
    desktop.press(Qt::Key_F5);
    ASSERT_TRUE(desktop.waitFor([&] { return page()->isUpToDate(); }));
    EXPECT_EQ(rings.count(), 1) << "once";

    click("Growth: Control, lot N4");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("growth is recorded"));
    ASSERT_TRUE(desktop.comesToSee("Grown, as it must."));
    click("No growth: Vial of " + lot);
    desktop.press(Qt::Key_Escape);
    EXPECT_TRUE(desktop.sees("To be read since")) << "nothing is recorded by one key";
    desktop.press(Qt::Key_N);
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("No biological indicator waits for anybody"));
}

TEST_F(BiologicalsOnScreen, AnEarlyReadingIsAskedAboutAndDoesNotCount)
{
    runLoad();
    incubate();
    desktop.clock().set(local("12:00"));
    openPage();
    click("No growth: Vial of " + lot);
    EXPECT_TRUE(desktop.sees("it is too early"));
    EXPECT_EQ(desktop.focusName(), "Leave it: Vial of " + lot);
    desktop.press(Qt::Key_Return);
    EXPECT_FALSE(desktop.sees("it is too early")) << "by the same two keys nothing is recorded";
    EXPECT_TRUE(desktop.messages().isEmpty());
    click("No growth: Vial of " + lot);
    click("Record No growth: Vial of " + lot);
    EXPECT_TRUE(desktop.comesToSee("That does not count. Read it again from 5 Mar 2031 08:35"));
    EXPECT_TRUE(desktop.comesToSee("in 21 h"));
}

TEST_F(BiologicalsOnScreen, WhatIsDueStandsOutFromWhatIsNot)
{
    runLoad();
    incubate();
    openPage();
    const auto kindOf = [this](const QString& name) {
        for (const auto* const button : desktop.window().findChildren<QAbstractButton*>()) {
            if (button->isVisible() && button->accessibleName() == name) {
                return button->property("kind").toString();
            }
        }
        return QString("none");
    };
    ASSERT_TRUE(desktop.comesToSee("in 24 h"));
    EXPECT_EQ(kindOf("No growth: Vial of " + lot), "quiet");
    EXPECT_TRUE(desktop.sees("Vials and controls to be read now: 0, incubating: 2"));
    desktop.clock().set(local("08:36", "2031-03-05"));
    desktop.press(Qt::Key_F5);
    ASSERT_TRUE(desktop.comesToSee("To be read since"));
    EXPECT_EQ(kindOf("No growth: Vial of " + lot), "plain");
    EXPECT_TRUE(desktop.sees("Vials and controls to be read now: 2, incubating: 0"));
}

TEST_F(BiologicalsOnScreen, EveryRowThatWaitsIsCounted)
{
    runLoad();
    openPage();
    EXPECT_TRUE(desktop.comesToSee("to be prepared or looked at: 1"));
}

TEST_F(BiologicalsOnScreen, AQuestionComesIntoSight)
{
    runLoad();
    incubate();
    desktop.clock().set(local("12:00"));
    openPage();
    ASSERT_TRUE(desktop.comesToSee("in 21 h"));
    desktop.window().resize(1366, 420); // as where many stand above it
    QTest::qWait(50);
    click("No growth: Vial of " + lot);
    QTest::qWait(50);
    const QWidget* const leave = QApplication::focusWidget();
    ASSERT_NE(leave, nullptr);
    ASSERT_EQ(desktop.focusName(), "Leave it: Vial of " + lot);
    EXPECT_EQ(leave->visibleRegion().boundingRect().height(), leave->height());
}

TEST_F(BiologicalsOnScreen, AVoidVialIsNotSaidToBeAwaited)
{
    runLoad();
    incubate();
    desktop.clock().set(local("09:00", "2031-03-05"));
    openPage();
    EXPECT_TRUE(desktop.comesToSee("Implant, held until read"));
    click("No growth: Control, lot N4");
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Void: its control did not grow"));
    EXPECT_FALSE(desktop.sees("Implant, held until read"));
    EXPECT_TRUE(desktop.sees("Implant, held: this vial cannot free it"));
}

TEST_F(BiologicalsOnScreen, GrowthFillsThePageWithWhoIsToldAndWhatIsInQuestion)
{
    runLoad();
    incubate();
    desktop.clock().set(local("12:00"));
    openPage();
    click("Growth: Vial of " + lot);
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.comesToSee("Positive biological indicator (BI): load " + lot));
    for (const char* const line :
         {"Infection prevention", "The surgeon", "Stop the sterilizer", "not signed, hold it"}) {
        EXPECT_TRUE(desktop.sees(line)) << line;
    }
}

TEST_F(BiologicalsOnScreen, ADeadControlSaysWhatItVoids)
{
    runLoad();
    incubate();
    desktop.clock().set(local("09:00", "2031-03-05"));
    openPage();
    click("No growth: Control, lot N4");
    EXPECT_TRUE(desktop.sees("A control must grow"));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Did not grow: the vials beside it are void."));
    EXPECT_TRUE(desktop.sees("Void: its control did not grow"));
}

} // namespace
} // namespace loadwarden::ui_tests
