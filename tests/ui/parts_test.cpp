// Fields, and what tells a scanner from a person.
#include "ui/parts/flow_layout.h"
#include "ui/parts/quantity_edit.h"
#include "ui/parts/time_edit.h"
#include "ui/parts/wheel_guard.h"
#include "ui/shell/moment_timer.h"
#include "ui/shell/scan_burst.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QComboBox>
#include <QLineEdit>
#include <QSignalSpy>
#include <QTest>
#include <QWheelEvent>

namespace loadwarden::ui {
namespace {

TEST(TimeField, ReadsTimesByTheFacilitysClocks)
{
    const Zone zone = *Zone::find("America/Chicago");
    TimeEdit edit(zone, *parseInstant("2031-03-04T07:14-06:00"));
    EXPECT_EQ(edit.timeLine()->text(), "07:14");
    EXPECT_EQ(edit.dateLine()->text(), "2031-03-04");
    EXPECT_EQ(edit.value()->at, *parseInstant("2031-03-04T07:14-06:00"));
    for (const char* const good : {"7:14", "714", "0714", " 07:14 "}) {
        edit.timeLine()->setText(good);
        ASSERT_TRUE(edit.value()) << good;
        EXPECT_EQ(edit.value()->at, *parseInstant("2031-03-04T07:14-06:00")) << good;
    }
    for (const char* const bad : {"", "7", "24:00", "07:60", "7:1", "x", "-714", "07:145"}) {
        edit.timeLine()->setText(bad);
        EXPECT_FALSE(edit.value()) << bad;
        EXPECT_FALSE(edit.whatIsWrong().isEmpty()) << bad;
    }
    edit.timeLine()->setText("07:14");
    edit.dateLine()->setText("2031-02-30");
    EXPECT_FALSE(edit.value());
}

TEST(TimeField, DoesNotGuessAtTheChangeOfTheClocks)
{
    // United States, 2031: forward on 9 March at 02:00, back on 2 November at 02:00 (tz database).
    const Zone zone = *Zone::find("America/Chicago");
    TimeEdit edit(zone, *parseInstant("2031-03-09T08:00-05:00"));
    edit.timeLine()->setText("02:30");
    EXPECT_TRUE(edit.whatIsWrong().contains("skip"));
    edit.timeLine()->setText("03:00");
    EXPECT_TRUE(edit.whatIsWrong().isEmpty());
    edit.dateLine()->setText("2031-11-02");
    edit.timeLine()->setText("01:30");
    EXPECT_TRUE(edit.whatIsWrong().contains("twice"));
    edit.timeLine()->setText("02:00");
    EXPECT_TRUE(edit.whatIsWrong().isEmpty());
}

TEST(QuantityField, KeepsWhatWasTyped)
{
    QuantityEdit edit(Unit::celsius);
    EXPECT_TRUE(edit.isEmpty());
    EXPECT_FALSE(edit.whatIsWrong().isEmpty());
    edit.line()->setText("132.40");
    EXPECT_EQ(edit.value()->typed, "132.40");
    EXPECT_EQ(edit.value()->value, (Quantity{Unit::celsius, 132'400}));
    edit.line()->setText("132,4");
    EXPECT_EQ(edit.value()->value, (Quantity{Unit::celsius, 132'400}));
    for (const char* const bad : {"hot", "1.2345", "1 2", "--1"}) {
        edit.line()->setText(bad);
        EXPECT_FALSE(edit.value()) << bad;
        EXPECT_FALSE(edit.whatIsWrong().isEmpty()) << bad;
    }
}

TEST(ABurst, IsKeysCloseTogetherThatEndWithEnter)
{
    const auto typed = [](const QString& text, std::int64_t gap, std::int64_t beforeEnter) {
        ScanBurst burst({.mostMs = 40, .leastKeys = 4});
        std::int64_t at = 1'000;
        for (const QChar character : text) {
            (void)burst.key(character, at += gap);
        }
        return burst.enter(at + beforeEnter);
    };
    EXPECT_EQ(typed("ABC1", 40, 40), "ABC1");
    EXPECT_EQ(typed("ABC1", 41, 5), std::nullopt);
    EXPECT_EQ(typed("ABC1", 5, 41), std::nullopt);
    EXPECT_EQ(typed("ABC", 5, 5), std::nullopt);
    EXPECT_EQ(typed("", 5, 5), std::nullopt);
}

TEST(ABurst, BeginsAfterWhatAPersonTyped)
{
    ScanBurst burst({.mostMs = 40, .leastKeys = 4});
    EXPECT_TRUE(burst.key(u'x', 1'000));
    EXPECT_TRUE(burst.key(u'L', 1'200));
    EXPECT_FALSE(burst.key(u'O', 1'205));
    EXPECT_FALSE(burst.key(u'T', 1'210));
    EXPECT_FALSE(burst.key(u'1', 1'215));
    EXPECT_EQ(burst.enter(1'220), "LOT1");
    EXPECT_EQ(burst.enter(1'221), std::nullopt);
}

TEST(TheTimer, ComesAtItsMomentByTheClockThatIsGiven)
{
    const Instant now = *parseInstant("2031-03-04T07:14-06:00");
    FixedClock clock(now);
    MomentTimer timer(clock);
    QSignalSpy came(&timer, &MomentTimer::came);
    timer.wait(now + Duration::hours(2));
    timer.look();
    EXPECT_EQ(came.count(), 0);
    clock.set(now + Duration::hours(2));
    timer.look();
    EXPECT_EQ(came.count(), 1);
    timer.look();
    EXPECT_EQ(came.count(), 1) << "once";
    timer.wait(now + Duration::hours(2) + Duration::milliseconds(30));
    clock.set(now + Duration::hours(3));
    EXPECT_TRUE(came.wait(5'000)) << "by itself";
}

TEST(TheWheel, ChangesNoChoiceInPassing)
{
    const auto turn = [](QComboBox& combo) {
        QWheelEvent event(QPointF(5, 5), combo.mapToGlobal(QPointF(5, 5)), {}, {0, -120},
                          Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase, false);
        QApplication::sendEvent(&combo, &event);
        return combo.currentIndex();
    };
    QComboBox combo;
    combo.addItems({QStringLiteral("A"), QStringLiteral("B"), QStringLiteral("C")});
    combo.show();
    EXPECT_EQ(turn(combo), 1) << "as the toolkit has it";
    QObject owner;
    const WheelGuard guard(&owner);
    EXPECT_EQ(turn(combo), 1);
}

TEST(AFlow, GoesIntoFurtherLinesWhereThereIsNoRoom)
{
    QWidget window;
    auto* const flow = new FlowLayout;
    flow->setSpacing(10);
    window.setLayout(flow);
    std::vector<QWidget*> things;
    for (int i = 0; i < 3; ++i) {
        things.push_back(new QWidget);
        things.back()->setFixedSize(100, 40);
        flow->addWidget(things.back());
    }
    window.resize(320, 100);
    window.show();
    QTest::qWait(20);
    EXPECT_EQ(things[2]->pos(), QPoint(220, 0));
    EXPECT_EQ(flow->heightForWidth(320), 40);
    EXPECT_EQ(flow->heightForWidth(319), 90) << "a pixel less";
    EXPECT_EQ(flow->minimumSize().width(), 100);
    things[1]->hide();
    QTest::qWait(20);
    EXPECT_EQ(things[2]->pos(), QPoint(110, 0)) << "what is hidden takes no place";
}

} // namespace
} // namespace loadwarden::ui
