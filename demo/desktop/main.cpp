// The desktop on the journal of an invented department. Its day lies in 2031, so that the window
// has a clock of its own; all else is as in the program itself.
#include "demo/desktop/running_clock.h"
#include "ui/parts/banner.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/main_window.h"

#include <QApplication>
#include <QDir>
#include <QElapsedTimer>

#include <iostream>

int main(int argc, char** argv)
{
    using namespace loadwarden;
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("loadwarden-demo"));
    const QStringList given = QApplication::arguments();
    const auto moment = given.size() == 4 ? parseInstant(given[3].toStdString()) : std::nullopt;
    if (!moment) {
        std::cerr << "usage: loadwarden-demo-desktop JOURNAL KEEP MOMENT\n"
                     "MOMENT: what the clock shows at the start, as 2031-03-14T13:10-05:00\n";
        return 2;
    }
    // The settings of a workstation that is used for work stay as they are.
    ui::LocalSettings settings(QDir(given[2]).filePath(QStringLiteral("workstation.ini")));
    ui::Look look(application);
    look.apply(settings.theme(), settings.textSize());

    const demo::RunningClock clock(*moment);
    RandomIdSource ids;
    QElapsedTimer ticks;
    ticks.start();
    ui::MainWindow window({.look = look,
                           .settings = settings,
                           .place = {.clock = clock,
                                     .ids = ids,
                                     .workstation = "ws-demo",
                                     .keep = given[2].toStdString()},
                           .firstFile = QDir(given[2]).filePath(QStringLiteral("first.journal")),
                           .ticks = [&ticks] { return ticks.elapsed(); }});
    window.setWindowTitle(QStringLiteral("Loadwarden · demo · invented department"));
    window.banner().say(
        ui::Banner::Tone::neutral,
        QStringLiteral("This is the demo: department, people, loads and dates are invented."),
        QStringLiteral("Sign in as st-brook with PIN 815273, a lead. What you try here is gone at "
                       "the next start."));
    window.begin(given[1]);
    window.resize(1366, 768);
    window.show();
    return QApplication::exec();
}
