// Writes pictures of what shows traces, in both themes and at two sizes, of simulated cycles.
#include "core/cycle/simulation/simulation.h"
#include "core/cycle/trace/mapping_proposal.h"
#include "demo/painter/another_recorder.h"
#include "ui/look/text.h"
#include "ui/trace/mapping_form.h"
#include "ui/trace/trace_explorer.h"
#include "ui/trace/trace_facts.h"
#include "ui/trace/trace_plot.h"

#include <QApplication>
#include <QDir>
#include <QTest>
#include <QVBoxLayout>

#include <functional>
#include <iostream>

namespace {

using namespace loadwarden;

/// What a cycle specification would ask of the simulated sterilizer.
AskedOfTrace askedOf(const simulation::Settings& settings)
{
    AskedOfTrace asked;
    asked.airRemoval = AirRemoval::prevacuum;
    asked.band = {.leastCelsius = settings.setCelsius,
                  .mostCelsius = settings.setCelsius + settings.bandKelvin,
                  .required = {0, 1}};
    asked.leastExposureSeconds = settings.exposureSeconds;
    asked.leastDryingSeconds = settings.dryingSeconds;
    asked.atmosphereKPa = settings.atmosphereKPa;
    asked.isLeakTest = settings.program == simulation::Program::leakTest;
    return asked;
}

class Painter {
public:
    Painter(QApplication& application, QDir folder)
        : m_look(application), m_folder(std::move(folder))
    {
    }

    void paint(ui::Theme theme, QSize size)
    {
        m_look.apply(theme, ui::TextSize::normal);
        m_size = size;
        m_suffix =
            QStringLiteral("%1-%2").arg(QLatin1String(theme == ui::Theme::light ? "light" : "dark"),
                                        QString::number(size.width()));
        simulation::Settings settings;
        paintTrace(settings, QStringLiteral("clean"));
        settings.faults = {{.kind = simulation::FaultKind::interruptedExposure, .size = 30},
                           {.kind = simulation::FaultKind::residualAir, .size = 3},
                           {.kind = simulation::FaultKind::shortDrying, .size = 200}};
        paintTrace(settings, QStringLiteral("faults"));
        simulation::Settings leak;
        leak.program = simulation::Program::leakTest;
        leak.faults = {{.kind = simulation::FaultKind::leak, .size = 0.3}};
        paintTrace(leak, QStringLiteral("leak"));

        auto* const form = new ui::MappingForm;
        form->show(demo::anotherRecorder, proposeMapping(demo::anotherRecorder));
        save(form, QStringLiteral("mapping"));
        save(new ui::TraceExplorer(m_look), QStringLiteral("explorer"));
    }

private:
    void paintTrace(const simulation::Settings& settings, const QString& name)
    {
        const simulation::Cycle cycle = simulation::simulate(settings);
        const AskedOfTrace asked = askedOf(settings);
        const TraceEvaluation evaluation = evaluate(cycle.trace, asked);
        auto* const plot = new ui::TracePlot(m_look);
        plot->show(cycle.trace, evaluation, asked, true);
        save(plot, QStringLiteral("trace-") + name, [&](QWidget& window) {
            plot->setFocus();
            QTest::keyClick(plot, Qt::Key_E);
            QTest::keyClick(plot, Qt::Key_Right, Qt::ShiftModifier);
            QTest::qWait(50);
            grab(window, QStringLiteral("trace-%1-exposure").arg(name));
            const QString file =
                m_folder.filePath(QStringLiteral("export-%1-%2.").arg(name, m_suffix));
            const bool isSaved =
                plot->save(file + QStringLiteral("png"))
                && (!ui::TracePlot::canSaveSvg() || plot->save(file + QStringLiteral("svg")));
            if (!isSaved) {
                std::cerr << "cannot write " << file.toStdString() << '\n';
            }
        });
        auto* const facts = new ui::TraceFacts(m_look);
        facts->show(cycle.trace, evaluation, asked);
        save(facts, QStringLiteral("facts-") + name);
    }

    void grab(QWidget& window, const QString& name)
    {
        const QString file = m_folder.filePath(QStringLiteral("%1-%2.png").arg(name, m_suffix));
        if (!window.grab().save(file)) {
            std::cerr << "cannot write " << file.toStdString() << '\n';
        }
    }

    /// In a window as the program's pages are.
    void save(QWidget* shown, const QString& name,
              const std::function<void(QWidget&)>& further = {})
    {
        QWidget window;
        window.setObjectName(QStringLiteral("page"));
        window.setAttribute(Qt::WA_StyledBackground);
        auto* const column = new QVBoxLayout(&window);
        column->setContentsMargins(ui::space::large, ui::space::large, ui::space::large,
                                   ui::space::large);
        column->addWidget(shown);
        window.resize(m_size);
        window.show();
        QApplication::setActiveWindow(&window);
        QTest::qWait(100);
        if (window.height() > m_size.height()) {
            std::cout << name.toStdString() << " is " << window.height() << " high\n";
        }
        grab(window, name);
        if (further) {
            further(window);
        }
    }

    ui::Look m_look;
    QDir m_folder;
    QSize m_size;
    QString m_suffix;
};

} // namespace

int main(int argc, char** argv)
{
    QApplication application(argc, argv);
    const QStringList given = QApplication::arguments();
    if (given.size() != 2 || !QDir().mkpath(given[1])) {
        std::cerr << "usage: loadwarden-trace-pictures FOLDER\n";
        return 2;
    }
    Painter painter(application, QDir(given[1]));
    for (const ui::Theme theme : {ui::Theme::light, ui::Theme::dark}) {
        for (const QSize size : {QSize(1366, 768), QSize(1920, 1080)}) {
            painter.paint(theme, size);
        }
    }
    return 0;
}
