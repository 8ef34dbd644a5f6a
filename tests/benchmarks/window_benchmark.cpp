// What the window takes with a long journal: until something is painted that was asked for, and how
// long it does not answer. What is asked for stands beside each figure; people judge.
//
// today, load, records or work as an argument measures only that. Everything is real but the screen (offscreen), the keys (posted to the window as the platform's
// would be) and the PIN's hash (as quick as it can be: its cost is chosen, and nobody's to better).
#include "tests/benchmarks/window/figures.h"
#include "tests/benchmarks/window/measures.h"

#include <QFile>
#include <QLocale>
#include <QMainWindow>

#include <cstdio>
#include <cstring>
#include <exception>
#include <string>

namespace {

using namespace loadwarden::benchmarks;

/// The window of a program that does nothing, linked to the same libraries.
int bare(PaintWatch& application, double begun)
{
    QMainWindow window;
    window.resize(sizeOfWindow);
    window.show();
    const Moment there = application.painted([] { return true; });
    std::printf("%f %f\n", there.wall - begun, there.processor);
    return 0;
}

/// Makes the journal where it is not there yet, measures and prints it.
void measure(PaintWatch& application, const char* program, const std::string& only)
{
    const LongJournal& journal = longJournal();
    BenchDesktop(application, journal).prepare();
    const auto isWanted = [&](const char* what) { return only.empty() || only == what; };
    printHead();
    if (isWanted("today")) {
        measureToday(program);
    }
    if (isWanted("records")) {
        measureRecords(application, journal);
    }
    BenchDesktop desktop(application, journal);
    (void)desktop.open();
    desktop.signIn();
    if (isWanted("load")) {
        measureLoads(desktop, journal);
    }
    if (isWanted("work")) {
        measureLongWork(desktop, journal);
    }
}

int run(int argc, char** argv)
{
    QTemporaryDir folder;
    // A screen on which the window has room.
    QFile screen(folder.filePath(QStringLiteral("screen.json")));
    if (!screen.open(QIODevice::WriteOnly)) {
        return 2;
    }
    screen.write(R"({"screens":[{"name":"s","x":0,"y":0,"width":1920,"height":1080,)"
                 R"("logicalDpi":96,"logicalBaseDpi":96,"dpr":1}]})");
    screen.close();
    qputenv("QT_QPA_PLATFORM", "offscreen:configfile=" + screen.fileName().toUtf8());
    qputenv("XDG_RUNTIME_DIR", folder.path().toUtf8());
    QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
    const bool isChild = argc == 3;
    if (isChild) {
        countIfAsked(argv[1]);
    }
    PaintWatch application(argc, argv);
    if (isChild) {
        const double begun = std::atof(argv[2]);
        return std::strcmp(argv[1], "--bare") == 0 ? bare(application, begun)
                                                   : todayOnce(application, begun);
    }
    measure(application, argv[0], argc == 2 ? argv[1] : "");
    return 0;
}

} // namespace

int main(int argc, char** argv)
{
    try {
        return run(argc, argv);
    } catch (const std::exception& error) {
        std::fprintf(stderr, "window_benchmark: %s\n", error.what());
        return 1;
    }
}
