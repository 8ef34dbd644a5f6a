#include "core/store/seal_key_file.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/main_window.h"
#include "ui/shell/workstation_name.h"

#include <QApplication>
#include <QCommandLineParser>
#include <QDir>
#include <QElapsedTimer>
#include <QFileInfo>
#include <QStandardPaths>

namespace {

using namespace loadwarden;

/// The options of the program.
struct Options {
    QCommandLineOption settings{"settings", "Keep this workstation's settings in FILE.", "FILE"};
    QCommandLineOption theme{"theme", "light or dark, kept in the settings.", "THEME"};
    QCommandLineOption topics{
        "topics", "The folder of the facility's own topics, kept in the settings.", "FOLDER"};
    QCommandLineOption size{"size", "Size of the window, as 1366x768.", "SIZE"};
};

bool setTheme(ui::LocalSettings& settings, const QString& name)
{
    if (name == QLatin1String("light") || name == QLatin1String("dark")) {
        settings.setTheme(name == QLatin1String("dark") ? ui::Theme::dark : ui::Theme::light);
        return true;
    }
    return name.isEmpty();
}

/// "1366x768"; an empty size where it is none.
QSize sizeOf(const QString& text)
{
    const QStringList sides = text.split(u'x');
    return sides.size() == 2 ? QSize(sides[0].toInt(), sides[1].toInt()) : QSize();
}

} // namespace

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    QApplication::setApplicationName(QStringLiteral("loadwarden"));
    const Options options;
    QCommandLineParser parser;
    parser.setApplicationDescription(QStringLiteral(
        "The workstation at the sterilizer. It recommends; a named person decides and signs.\n"
        "Makers' instructions for use (IFU), facility policy, local codes and licensed practice "
        "come first."));
    parser.addHelpOption();
    parser.addPositionalArgument(QStringLiteral("JOURNAL"),
                                 QStringLiteral("The journal's file; without one, that which was "
                                                "open last, or the first start."));
    parser.addOptions({options.settings, options.theme, options.topics, options.size});
    parser.process(application);

    const QDir keep(QString::fromStdString(userDataFolder().string()));
    ui::LocalSettings settings(parser.isSet(options.settings)
                                   ? parser.value(options.settings)
                                   : keep.filePath(QStringLiteral("workstation.ini")));
    if (!setTheme(settings, parser.value(options.theme))) {
        parser.showHelp(2);
    }
    if (parser.isSet(options.topics)) {
        settings.setTopicsFolder(QFileInfo(parser.value(options.topics)).absoluteFilePath());
    }
    ui::Look look(application);
    look.apply(settings.theme(), settings.textSize());

    const SystemClock clock;
    RandomIdSource ids;
    QElapsedTimer ticks;
    ticks.start();
    const QDir documents(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
    ui::MainWindow window({.look = look,
                           .settings = settings,
                           .place = {.clock = clock,
                                     .ids = ids,
                                     .workstation = ui::workstationName(),
                                     .keep = userDataFolder()},
                           .firstFile = documents.filePath(QStringLiteral("department.journal")),
                           .ticks = [&ticks] { return ticks.elapsed(); }});
    QString journal = parser.positionalArguments().value(0);
    if (journal.isEmpty() && QFileInfo::exists(settings.journal())) {
        journal = settings.journal();
    }
    window.begin(journal);
    const QSize size = sizeOf(parser.value(options.size));
    window.resize(size.isEmpty() ? QSize(1366, 768) : size);
    window.show();
    return QApplication::exec();
}
