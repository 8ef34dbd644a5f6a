#pragma once

#include "tests/ui/department.h"
#include "ui/load/load_page.h"
#include "ui/load/load_view.h"

#include <gtest/gtest.h>

#include <QApplication>
#include <QTest>

// The page of a load in a department that has passed its Bowie-Dick test, worked by keys.

namespace loadwarden::ui_tests {

inline const std::string secondPin = "739182";

class LoadOnScreen : public ::testing::Test {
protected:
    LoadOnScreen()
    {
        desktop.found();
        registerDepartment(desktop);
        passBowieDick(desktop);
        desktop.clock().set(local("06:40"));
    }

    void openPage(const QString& who = QStringLiteral("B-1"),
                  const std::string& pin = supervisorPin)
    {
        desktop.open();
        desktop.signIn(who, pin);
        desktop.press(Qt::Key_2, Qt::ControlModifier);
        settle();
    }

    void settle()
    {
        QTest::qWait(20);
        ASSERT_TRUE(desktop.waitFor([this] { return page() != nullptr && page()->isUpToDate(); }));
        QTest::qWait(20);
    }

    /// Goes on with Tab until what has the keyboard is called so.
    void tabTo(const QString& name)
    {
        QTest::qWait(20); // what was made anew is seen a moment later
        QStringList passed;
        for (int i = 0; i < 200; ++i) {
            if (desktop.focusName().startsWith(name)) {
                return;
            }
            passed << desktop.focusName();
            desktop.press(Qt::Key_Tab);
        }
        passed.removeDuplicates();
        FAIL() << "Tab does not lead to " << name.toStdString() << " but through "
               << passed.join(QStringLiteral("; ")).toStdString();
    }

    void pressButton(const QString& name)
    {
        tabTo(name);
        desktop.press(Qt::Key_Space);
    }

    void choose(const QString& combo, int downs)
    {
        tabTo(combo);
        for (int i = 0; i < downs; ++i) {
            desktop.press(Qt::Key_Down);
        }
    }

    void sign(const std::string& pin = supervisorPin)
    {
        dialogIsActive();
        ASSERT_TRUE(desktop.comesToSee("You sign"));
        desktop.type(QString::fromStdString(pin));
        desktop.press(Qt::Key_Return);
    }

    /// No window manager makes a dialog active here.
    void dialogIsActive()
    {
        ASSERT_TRUE(desktop.waitFor([] { return QApplication::activeModalWidget() != nullptr; }));
        QApplication::setActiveWindow(QApplication::activeModalWidget());
        ASSERT_TRUE(desktop.waitFor([] { return QApplication::focusWidget() != nullptr; }));
    }

    void leaveDialog()
    {
        desktop.press(Qt::Key_Escape);
        ASSERT_TRUE(desktop.waitFor([] { return QApplication::activeModalWidget() == nullptr; }));
        QApplication::setActiveWindow(&desktop.window());
        settle();
    }

    bool saysSoon(const QString& text)
    {
        const bool isSaid = desktop.waitFor([&] { return desktop.messages().contains(text); });
        if (QApplication::activeModalWidget() == nullptr) {
            QApplication::setActiveWindow(&desktop.window());
        }
        return isSaid;
    }

    /// The load of the department runs and is opened.
    void openLoad(Implant implant = Implant::no, const QString& who = QStringLiteral("B-1"),
                  const std::string& pin = supervisorPin)
    {
        cycle = runLoad(desktop, implant);
        openPage(who, pin);
        ASSERT_TRUE(desktop.waitFor([this] { return page()->isUpToDate(); }));
        tabTo("Loads and tests at hand");
        desktop.press(Qt::Key_Return);
        ASSERT_TRUE(desktop.waitFor(
            [this] { return page()->view() != nullptr && page()->view()->desk().isUpToDate(); }));
    }

    ui::LoadPage* page() { return desktop.window().findChild<ui::LoadPage*>(); }

    const LoadSheet& sheet() { return *page()->view()->desk().sheet(); }

    void readPrintout()
    {
        tabTo("Sterilizer printed");
        desktop.type("S1");
        tabTo("Program printed");
        desktop.type("P1");
        tabTo("Cycle counter printed");
        desktop.type("101");
        tabTo("Start printed: Time as 07:14");
        desktop.type("07:00");
        desktop.press(Qt::Key_Tab);
        desktop.press(Qt::Key_Tab);
        desktop.type("07:50");
        tabTo("Temperature");
        desktop.type("132.4");
        tabTo("Exposure time");
        desktop.type("4");
        tabTo("Drying time");
        desktop.type("20");
        pressButton("Record what the printout says");
        ASSERT_TRUE(saysSoon("What the printout says is recorded."));
        settle();
    }

    // A recorder's file of which nobody has said yet how it is read.
    void lookAtRecording(const QString& file)
    {
        tabTo("A recorder's file of this cycle");
        desktop.type(file);
        desktop.press(Qt::Key_Return);
    }
    void confirmRecording()
    {
        ASSERT_TRUE(desktop.comesToSee("How this recorder's file is read"));
        pressButton("Read files of this recorder so");
        ASSERT_TRUE(desktop.comesToSee("Continuously in the band"));
    }
    void attachRecording()
    {
        pressButton("Attach it to this load");
        ASSERT_TRUE(saysSoon("The recording is attached to this load."));
        settle();
    }

    void readIndicators()
    {
        pressButton("Read Outside of I1");
        ASSERT_TRUE(desktop.comesToSee("what do you see?"));
        desktop.press(Qt::Key_A);
        ASSERT_TRUE(saysSoon("Outside of I1: Accept"));
        settle();
        ASSERT_TRUE(desktop.waitFor([this] { return desktop.focusName() == "Read In PCD"; }))
            << "what is read next has the keyboard, not " << desktop.focusName().toStdString();
        desktop.press(Qt::Key_Space);
        ASSERT_TRUE(desktop.comesToSee("The front need only have entered the accept zone"));
        desktop.press(Qt::Key_A);
        ASSERT_TRUE(saysSoon("In PCD: Accept"));
        settle();
    }

    void unload()
    {
        pressButton("Everything came out and is good");
        desktop.press(Qt::Key_Space);
        ASSERT_TRUE(saysSoon("The unloading is recorded."));
        settle();
    }

    Desktop desktop;
    std::string cycle;
};

} // namespace loadwarden::ui_tests
