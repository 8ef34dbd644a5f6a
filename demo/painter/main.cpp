// Writes pictures of every page: of a journal at a moment, in both themes and at two sizes, driven
// by keys as a person would.
#include "core/release/finding.h"
#include "demo/painter/another_recorder.h"
#include "ui/load/cycle_list.h"
#include "ui/load/load_page.h"
#include "ui/load/load_view.h"
#include "ui/load/trace_section.h"
#include "ui/questions/questions_page.h"
#include "ui/records/records_page.h"
#include "ui/settings/settings_page.h"
#include "ui/shell/area.h"
#include "ui/shell/local_settings.h"
#include "ui/shell/main_window.h"
#include "ui/shell/work_view.h"
#include "ui/today/today_page.h"
#include "ui/trace/mapping_form.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <QApplication>
#include <QDir>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>
#include <QScrollArea>
#include <QScrollBar>
#include <QTableView>
#include <QTemporaryDir>
#include <QTest>

#include <algorithm>
#include <iostream>

namespace {

using namespace loadwarden;

constexpr int longestWaitMs = 60'000;

struct Wanted {
    QString journal; ///< empty: the first start
    std::filesystem::path keep;
    Instant moment;
    QString who;
    QString pin;
    QDir folder;
    QString name; ///< before each file's name
};

class Painter {
public:
    Painter(QApplication& application, const Wanted& wanted)
        : m_wanted(wanted),
          m_settings(m_temp.filePath(QStringLiteral("workstation.ini"))),
          m_look(application),
          m_clock(wanted.moment)
    {
    }

    bool paint(ui::Theme theme, QSize size)
    {
        m_hasRecording = false;
        m_settings.setTheme(theme);
        m_look.apply(theme, ui::TextSize::normal);
        m_suffix =
            QStringLiteral("%1-%2").arg(QLatin1String(theme == ui::Theme::light ? "light" : "dark"),
                                        QString::number(size.width()));
        ui::MainWindow window({.look = m_look,
                               .settings = m_settings,
                               .place = {.clock = m_clock,
                                         .ids = m_ids,
                                         .workstation = "ws-pictures",
                                         .keep = m_wanted.keep},
                               .firstFile = m_temp.filePath(QStringLiteral("department.journal")),
                               // Keys come as slowly as a person types.
                               .ticks = [ms = std::int64_t{0}]() mutable { return ms += 1'000; }});
        window.begin(m_wanted.journal);
        window.resize(size);
        window.show();
        QApplication::setActiveWindow(&window);
        return m_wanted.journal.isEmpty() ? paintFirstStart(window) : paintAreas(window);
    }

private:
    void save(QWidget& window, const QString& page)
    {
        QTest::qWait(50);
        const QString file = m_wanted.folder.filePath(
            QStringLiteral("%1%2-%3.png").arg(m_wanted.name, page, m_suffix));
        if (!window.grab().save(file)) {
            std::cerr << "cannot write " << file.toStdString() << '\n';
        }
    }

    /// The newest record, with its history.
    static void showRecord(const ui::RecordsPage& records)
    {
        const auto isUpToDate = [&] { return records.isUpToDate(); };
        (void)QTest::qWaitFor(isUpToDate, longestWaitMs);
        if (auto* const table = records.findChild<QTableView*>(); table->isVisible()) {
            table->setFocus();
            (void)QTest::qWaitFor(isUpToDate, longestWaitMs);
        }
    }

    bool paintFirstStart(ui::MainWindow& window)
    {
        save(window, QStringLiteral("first-start"));
        return true;
    }

    bool paintAreas(ui::MainWindow& window)
    {
        const bool asks = QTest::qWaitFor(
            [] {
                return qobject_cast<QWidget*>(QApplication::focusWidget()) != nullptr
                       && QApplication::focusWidget()->inherits("QLineEdit");
            },
            longestWaitMs);
        if (!asks) {
            return false;
        }
        save(window, QStringLiteral("sign-in"));
        QTest::keyClicks(QApplication::focusWidget(), m_wanted.who);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QTest::keyClicks(QApplication::focusWidget(), m_wanted.pin);
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        const bool isIn = QTest::qWaitFor(
            [&] { return window.work() != nullptr && window.work()->isWhole(); }, longestWaitMs);
        if (!isIn) {
            return false;
        }
        const auto* const today = window.findChild<ui::TodayPage*>();
        (void)QTest::qWaitFor([&] { return today->isUpToDate(); }, longestWaitMs);
        for (int i = 0; i < window.work()->areaCount(); ++i) {
            window.work()->showArea(i);
            (void)QTest::qWaitFor([&] { return today->isUpToDate(); }, longestWaitMs);
            if (auto* const records = window.findChild<ui::RecordsPage*>();
                records != nullptr && records->isVisible()) {
                showRecord(*records);
            }
            if (const auto* const settings = window.findChild<ui::SettingsPage*>();
                settings != nullptr && settings->isVisible()) {
                (void)QTest::qWaitFor([&] { return settings->isUpToDate(); }, longestWaitMs);
            }
            const QLatin1String area(ui::areas()[static_cast<std::size_t>(i)].id);
            save(window, area);
            if (area == QLatin1String("load")) {
                paintLoads(window);
            } else if (area == QLatin1String("questions")) {
                paintQuestions(window);
            }
        }
        paintSections(window);
        return true;
    }

    /// The form for a new one, and the loads at hand, chosen with the arrows one after the other.
    void paintLoads(ui::MainWindow& window)
    {
        auto* const page = window.findChild<ui::LoadPage*>();
        auto* const list = page->findChild<ui::CycleList*>();
        const auto settled = [&] {
            return QTest::qWaitFor([&] { return page->isUpToDate(); }, longestWaitMs);
        };
        (void)settled();
        list->setFocus();
        QTest::keyClick(list, Qt::Key_N, Qt::ControlModifier);
        QTest::qWait(200);
        save(window, QStringLiteral("load-new"));
        list->setFocus();
        constexpr int mostLoads = 6;
        for (int i = 0; i < mostLoads && i < list->count(); ++i) {
            QTest::keyClick(list, i == 0 ? Qt::Key_Return : Qt::Key_Down);
            QTest::qWait(50);
            (void)settled();
            save(window, QStringLiteral("load-%1").arg(i + 1));
            paintRecording(window, *page->view());
        }
        if (m_suffix != QStringLiteral("light-1366")) {
            return;
        }
        // Once from top to bottom.
        window.resize(1366, 3'000);
        for (int i = 0; i < mostLoads && i < list->count(); ++i) {
            QTest::keyClick(list, Qt::Key_Up);
            QTest::qWait(50);
            (void)settled();
            save(window, QStringLiteral("load-whole-%1").arg(i + 1));
        }
        window.resize(1366, 768);
    }

    /// A topic that the rules answer, one that is computed, and words that fit none well.
    void paintQuestions(ui::MainWindow& window)
    {
        auto* const page = window.findChild<ui::QuestionsPage*>();
        const auto settled = [&] {
            (void)QTest::qWaitFor([&] { return page->isUpToDate(); }, longestWaitMs);
        };
        auto* const line = page->findChild<QLineEdit*>(); // before answers have lines of their own
        for (const char* const asked :
             {"the front has only just entered the accept zone",
              "does sterile mean free of every organism", "who polishes the doors", "TRAY-77"}) {
            line->setFocus();
            line->selectAll();
            QTest::keyClicks(line, QString::fromUtf8(asked));
            QTest::keyClick(line, Qt::Key_Return);
            QTest::qWait(50);
            settled();
            save(window,
                 QStringLiteral("questions-%1")
                     .arg(QString::fromUtf8(asked).section(u' ', 0, 1).replace(u' ', u'-')));
        }
    }

    static void scrollTo(const QWidget& shown, QScrollArea& scroll)
    {
        scroll.verticalScrollBar()->setValue(shown.mapTo(scroll.widget(), QPoint()).y());
    }

    /// Once: of a load about whose recording something is found, the picture, the figures, and how
    /// another recorder's file would be read.
    void paintRecording(ui::MainWindow& window, ui::LoadView& view)
    {
        const auto& findings = view.desk().sheet()->view().decision.findings;
        const bool isFound = std::ranges::any_of(
            findings, [](const Finding& each) { return textOf(each.key).starts_with("trace."); });
        auto* const section = view.findChild<ui::TraceSection*>();
        if (!isFound || section == nullptr || m_hasRecording) {
            return;
        }
        m_hasRecording = true;
        auto* const scroll = view.findChildren<QScrollArea*>().back();
        const auto& traces = view.desk().sheet()->view().folded.record.load.traces;
        section->goTo(QString::fromStdString(traces.front().id));
        (void)QTest::qWaitFor(
            [&] {
                const auto* const plot = section->findChild<ui::TracePlot*>();
                return plot != nullptr && plot->isVisible();
            },
            longestWaitMs);
        QTest::qWait(50);
        scrollTo(*section->findChild<ui::TracePlot*>(), *scroll);
        save(window, QStringLiteral("load-recording"));
        scrollTo(*section->findChild<ui::TraceFacts*>(), *scroll);
        save(window, QStringLiteral("load-recording-figures"));
        QFile file(m_temp.filePath(QStringLiteral("another-recorder_simulated.txt")));
        if (file.open(QIODevice::WriteOnly)) {
            file.write(demo::anotherRecorder);
            file.close();
        }
        section->open(file.fileName());
        (void)QTest::qWaitFor([&] { return section->findChild<ui::MappingForm*>()->isVisible(); },
                              longestWaitMs);
        QTest::qWait(50);
        scrollTo(*section->findChild<ui::MappingForm*>(), *scroll);
        save(window, QStringLiteral("load-recording-mapping"));
    }

    void paintSections(ui::MainWindow& window)
    {
        auto* const settings = window.findChild<ui::SettingsPage*>();
        for (int i = 0; i < window.work()->areaCount(); ++i) {
            if (QLatin1String(ui::areas()[static_cast<std::size_t>(i)].id)
                == QLatin1String("settings")) {
                window.work()->showArea(i);
            }
        }
        (void)QTest::qWaitFor([&] { return settings->isUpToDate(); }, longestWaitMs);
        for (int i = 0; i < settings->sectionCount(); ++i) {
            settings->showSection(i);
            save(window, QStringLiteral("settings-") + QLatin1String(settings->sectionId(i)));
        }
    }

    Wanted m_wanted;
    QTemporaryDir m_temp;
    ui::LocalSettings m_settings;
    ui::Look m_look;
    FixedClock m_clock;
    RandomIdSource m_ids;
    QString m_suffix;
    bool m_hasRecording = false; ///< painted already
};

} // namespace

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    const QStringList given = QApplication::arguments();
    const auto moment = given.size() == 8 ? parseInstant(given[3].toStdString()) : std::nullopt;
    if (!moment) {
        std::cerr
            << "usage: loadwarden-pictures JOURNAL KEEP MOMENT WHO PIN FOLDER NAME\n"
               "JOURNAL: \"\" for the first start; NAME: before each file's name, may be \"\"\n";
        return 2;
    }
    Wanted wanted{.journal = given[1],
                  .keep = given[2].toStdString(),
                  .moment = *moment,
                  .who = given[4],
                  .pin = given[5],
                  .folder = QDir(given[6]),
                  .name = given[7]};
    wanted.folder.mkpath(QStringLiteral("."));
    Painter painter(application, wanted);
    for (const QSize size : {QSize(1366, 768), QSize(1920, 1080)}) {
        for (const auto theme : {ui::Theme::light, ui::Theme::dark}) {
            if (!painter.paint(theme, size)) {
                std::cerr << "the window did not come so far\n";
                return 1;
            }
        }
    }
    return 0;
}
