// Signing in, the lock, the change of person, scans, keys.
#include "tests/ui/desktop.h"
#include "ui/parts/banner.h"
#include "ui/shell/work_view.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QAbstractButton>
#include <QAbstractItemModel>
#include <QApplication>
#include <QCompleter>
#include <QLineEdit>
#include <QTest>

#include <map>

namespace loadwarden::ui_tests {
namespace {

class Shell : public ::testing::Test {
protected:
    Shell() { desktop.found(); }

    /// A field on the page that is seen, as pages to come will have them.
    QLineEdit* addDraft()
    {
        auto* const draft = new QLineEdit(desktop.window().work());
        draft->setAccessibleName(QStringLiteral("Draft"));
        draft->setGeometry(400, 80, 300, 44);
        draft->show();
        draft->setFocus();
        return draft;
    }

    /// The names of the staff were read.
    void namesAreThere()
    {
        ASSERT_TRUE(desktop.waitFor([] {
            const auto* const line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
            return line != nullptr && line->completer() != nullptr
                   && line->completer()->model() != nullptr
                   && line->completer()->model()->rowCount() > 0;
        }));
    }

    Desktop desktop;
};

TEST_F(Shell, AsksForBadgeAndPinAndRefusesWrongOnesAtTheField)
{
    desktop.open();
    EXPECT_EQ(desktop.focusName(), "Badge, id or name");
    desktop.press(Qt::Key_Return);
    EXPECT_EQ(desktop.focusName(), "PIN");
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.sees("Scan your badge, or type your id or your name."));
    desktop.close();

    desktop.open();
    desktop.type("nobody");
    desktop.press(Qt::Key_Return);
    desktop.type("111111");
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("nobody"));
    EXPECT_EQ(desktop.focusName(), "Badge, id or name");
    EXPECT_EQ(desktop.window().work(), nullptr);
    desktop.close();

    desktop.open();
    desktop.type("B-1");
    desktop.press(Qt::Key_Return);
    desktop.type("111111");
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("not the PIN"));
    EXPECT_EQ(desktop.focusName(), "PIN");
    EXPECT_EQ(desktop.window().work(), nullptr);
}

TEST_F(Shell, ABadgeFromAScannerLeavesOnlyThePinToType)
{
    desktop.open();
    desktop.scan("B-2?");
    EXPECT_TRUE(desktop.comesToSee("no badge that is known here"));
    // A PIN that was typed as fast as a scanner types must not stand there for everybody.
    desktop.scan("482915");
    EXPECT_TRUE(desktop.comesToSee("no badge that is known here"));
    QTest::qWait(50);
    EXPECT_FALSE(desktop.sees("482915"));
    EXPECT_FALSE(desktop.messages().contains("482915"));
    desktop.close();

    desktop.open();
    desktop.scan("st-op");
    EXPECT_TRUE(desktop.waitFor([&] { return desktop.focusName() == "PIN"; }));
    desktop.type(QString::fromStdString(operatorPin));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Operator Two, operator"));
}

TEST_F(Shell, LocksWhenIdleAndKeepsWhatWasTyped)
{
    desktop.setIdleMs(5'000); // longer than signing in takes
    desktop.open();
    desktop.signIn();
    const QLineEdit* const draft = addDraft();
    desktop.type("half a rea");
    EXPECT_TRUE(desktop.comesToSee("Locked"));
    EXPECT_FALSE(draft->isVisible());
    desktop.type(QString::fromStdString(supervisorPin));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.waitFor([&] { return draft->isVisible(); }));
    EXPECT_EQ(draft->text(), "half a rea");
    EXPECT_EQ(desktop.focusName(), "Draft");
}

TEST_F(Shell, AnotherPersonTakesOverByBadgeAndThePageStays)
{
    desktop.open();
    desktop.signIn();
    const QLineEdit* const draft = addDraft();
    desktop.type("half");
    desktop.scan("st-op");
    EXPECT_TRUE(desktop.comesToSee("Change of person"));
    EXPECT_EQ(draft->text(), "half") << "what the scanner typed is out of the field again";
    desktop.type(QString::fromStdString(operatorPin));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Operator Two, operator"));
    EXPECT_EQ(draft->text(), "half");
    EXPECT_EQ(desktop.focusName(), "Draft");
}

TEST_F(Shell, WhoWorksHereIsCompletedWhileItIsTyped)
{
    desktop.open();
    namesAreThere();
    desktop.type("oper");
    desktop.press(Qt::Key_Return);
    EXPECT_EQ(desktop.focusName(), "PIN");
    desktop.type(QString::fromStdString(operatorPin));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Operator Two, operator"));
}

TEST_F(Shell, WhoWorksHereIsChosenAmongTheStaff)
{
    desktop.open();
    desktop.press(Qt::Key_Tab);
    EXPECT_EQ(desktop.focusName(), "Choose among the names of the staff");
    desktop.press(Qt::Key_Space);
    ASSERT_TRUE(desktop.waitFor([] { return QApplication::activePopupWidget() != nullptr; }));
    desktop.press(Qt::Key_Down); // Operator Two, then Supervisor One
    desktop.press(Qt::Key_Return);
    ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "PIN"; }));
    desktop.type(QString::fromStdString(supervisorPin));
    desktop.press(Qt::Key_Return);
    EXPECT_TRUE(desktop.comesToSee("Supervisor One, supervisor"));
}

TEST_F(Shell, WhatWasSaidToOnePersonIsNotForTheNext)
{
    desktop.open();
    desktop.signIn();
    const auto changeTo = [this](const QString& badge, const std::string& pin) {
        desktop.scan(badge);
        ASSERT_TRUE(desktop.comesToSee("Change of person"));
        desktop.type(QString::fromStdString(pin));
        desktop.press(Qt::Key_Return);
        ASSERT_TRUE(desktop.waitFor([this] { return desktop.window().work()->isVisible(); }));
    };
    desktop.scan("X-4711");
    ASSERT_TRUE(desktop.comesToSee("Nothing is known of X-4711."));
    changeTo("st-sup", supervisorPin);
    EXPECT_TRUE(desktop.messages().contains("X-4711")) << "it was said to the same person";
    changeTo("st-op", operatorPin);
    EXPECT_TRUE(desktop.messages().isEmpty()) << desktop.messages().toStdString();
}

TEST_F(Shell, AMessageMovesNothingThatCouldBePressed)
{
    desktop.open();
    desktop.signIn();
    const auto places = [this] {
        std::map<const QAbstractButton*, QPoint> found;
        for (const auto* const button : desktop.window().work()->findChildren<QAbstractButton*>()) {
            if (button->isVisible()) {
                found.emplace(button, button->mapToGlobal(QPoint(0, 0)));
            }
        }
        return found;
    };
    for (int area = 0; area < desktop.window().work()->areaCount(); ++area) {
        desktop.window().work()->showArea(area);
        QTest::qWait(50);
        const auto before = places();
        desktop.window().banner().say(ui::Banner::Tone::waiting, "Something has happened.",
                                      "Something is to be done about it.");
        QTest::qWait(50);
        std::size_t stayed = 0;
        for (const auto& [button, place] : places()) {
            // What was only read meanwhile was not there before.
            if (const auto was = before.find(button); was != before.end()) {
                EXPECT_EQ(place, was->second) << area << button->text().toStdString();
                ++stayed;
            }
        }
        EXPECT_GT(stayed, 5U) << area;
        EXPECT_EQ(desktop.window().size(), QSize(1366, 768)) << area;
        desktop.window().banner().putAway();
        QTest::qWait(20);
    }
}

TEST_F(Shell, AMaximisedWindowOfASmallScreenStaysSo)
{
    // What is left of 768 lines beside a window's title and a desktop's panel; a page that needs
    // more would make the window leave its maximised state.
    constexpr QSize small(1366, 690);
    desktop.open();
    desktop.signIn();
    for (int area = 0; area < desktop.window().work()->areaCount(); ++area) {
        desktop.window().work()->showArea(area);
        desktop.window().banner().say(ui::Banner::Tone::waiting, "Something has happened.",
                                      "Something is to be done about it.");
        QTest::qWait(50);
        const QSize least = desktop.window().minimumSizeHint();
        EXPECT_LE(least.width(), small.width()) << area;
        EXPECT_LE(least.height(), small.height()) << area;
    }
}

TEST_F(Shell, SlowKeysAreAPersonsAndStayInTheField)
{
    desktop.open();
    desktop.signIn();
    const QLineEdit* const draft = addDraft();
    desktop.type("st-op");
    desktop.press(Qt::Key_Return);
    QTest::qWait(50);
    EXPECT_EQ(draft->text(), "st-op");
    EXPECT_TRUE(desktop.window().banner().said().isEmpty());
}

TEST_F(Shell, AScanOfWhatIsNotKnownSaysSo)
{
    desktop.open();
    desktop.signIn();
    desktop.scan("X-4711");
    EXPECT_TRUE(desktop.comesToSee("Nothing is known of X-4711."));
    desktop.press(Qt::Key_Escape);
    EXPECT_TRUE(desktop.window().banner().said().isEmpty());
}

TEST_F(Shell, AreasAreReachedByKeysThatF1Lists)
{
    desktop.open();
    desktop.signIn();
    EXPECT_EQ(desktop.window().work()->area(), 0);
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    EXPECT_EQ(desktop.window().work()->area(), desktop.window().work()->areaCount() - 1);
    QTimer looks; // the list is there some time after its key
    QObject::connect(&looks, &QTimer::timeout, [&] {
        if (QApplication::activeModalWidget() == nullptr) {
            return;
        }
        looks.stop();
        for (const char* const line :
             {"F1", "F5", "Ctrl+L", "Ctrl+1", "Ctrl+9", "Ctrl+Shift+P", "Go to the page Today",
              "Go to the page Questions", "Go to the page Settings"}) {
            EXPECT_TRUE(desktop.sees(line)) << line;
        }
        desktop.press(Qt::Key_Escape);
    });
    looks.start(200);
    desktop.press(Qt::Key_F1);
    EXPECT_EQ(QApplication::activeModalWidget(), nullptr);
}

TEST_F(Shell, ASecondDesktopOnTheFileIsToldSo)
{
    const Office other(desktop.file().toStdString(), Access::write, desktop.place());
    EXPECT_THROW(desktop.open(), std::logic_error);
    EXPECT_TRUE(desktop.sees("The journal is not open"));
    EXPECT_TRUE(desktop.sees("Try again"));
}

TEST_F(Shell, SettingsChangeTheLookAtOnceAndAreKept)
{
    desktop.open();
    desktop.signIn();
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    desktop.click("This workstation");
    desktop.click("Light or dark: Dark");
    EXPECT_EQ(desktop.settings().theme(), ui::Theme::dark);
    desktop.click("Temperatures: °F");
    EXPECT_EQ(desktop.settings().temperatureUnit(), Unit::fahrenheit);
    EXPECT_EQ(QApplication::palette().color(QPalette::Window),
              ui::coloursOf(ui::Theme::dark).window);
}

TEST_F(Shell, TheFolderOfTheFacilitysTopicsIsTypedAndKept)
{
    desktop.open();
    desktop.signIn();
    desktop.press(Qt::Key_9, Qt::ControlModifier);
    desktop.click("This workstation");
    for (int i = 0; i < 60 && desktop.focusName() != "Topics of your own"; ++i) {
        desktop.press(Qt::Key_Tab);
    }
    ASSERT_EQ(desktop.focusName(), "Topics of your own");
    desktop.type("/no/such/folder");
    EXPECT_EQ(desktop.settings().topicsFolder(), "/no/such/folder");
    EXPECT_TRUE(desktop.sees("There is no folder of this name."));
    desktop.press(Qt::Key_A, Qt::ControlModifier);
    desktop.type(QFileInfo(desktop.file()).path());
    EXPECT_EQ(desktop.settings().topicsFolder(), QFileInfo(desktop.file()).path());
    EXPECT_FALSE(desktop.sees("There is no folder of this name."));
}

} // namespace
} // namespace loadwarden::ui_tests
