#include "ui/trace/trace_plot.h"

#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"
#include "ui/trace/trace_chart.h"
#include "ui/trace/trace_legend.h"
#include "ui/trace/trace_spoken.h"

#include <QFileDialog>
#include <QKeyEvent>
#include <QPainter>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr double zoomStep = 1.5;
constexpr double panStep = 0.1; ///< of what is seen
constexpr double beside = 0.15; ///< of the exposure, shown before and after it

} // namespace

TracePlot::TracePlot(Look& look, QWidget* parent)
    : QWidget(parent),
      m_look(look),
      m_scene(std::make_shared<TraceScene>()),
      m_legend(new TraceLegend),
      m_chart(new TraceChart),
      m_exposure(makeButton(tr("E  Exposure"))),
      m_saved(makeMuted({}))
{
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Trace"));
    auto* const column = new QVBoxLayout(this);
    constexpr int ring = 4; // for the keyboard's
    column->setContentsMargins(ring, ring, ring, ring);
    column->setSpacing(space::small);
    column->addWidget(m_legend);
    column->addWidget(m_chart, 1);

    auto* const buttons = new FlowLayout;
    const auto add = [&](QPushButton* button, const QString& name, auto does) {
        button->setAccessibleName(name);
        // The picture keeps the keyboard: its keys do the same.
        button->setFocusPolicy(Qt::NoFocus);
        connect(button, &QPushButton::clicked, this, does);
        buttons->addWidget(button);
    };
    add(makeButton(tr("+  Zoom in")), tr("Zoom in"), [this] { zoom(zoomStep); });
    add(makeButton(tr("−  Zoom out")), tr("Zoom out"), [this] { zoom(1 / zoomStep); });
    add(makeButton(tr("0  Show all")), tr("Show all of the trace"), [this] { showAll(); });
    add(m_exposure, tr("Show the exposure"), [this] { showExposure(); });
    QPushButton* const keep = makeButton(tr("Save picture…"));
    add(keep, tr("Save picture"), [this] { askForFile(); });
    keep->setFocusPolicy(Qt::StrongFocus);
    column->addLayout(buttons);
    column->addWidget(
        makeMuted(tr("Drag, or ← and →, to move. The wheel zooms once the picture has the "
                     "keyboard. Shift with ← or → reads sample by sample.")));
    column->addWidget(m_saved);
    m_saved->hide();

    m_chart->installEventFilter(this);
    connect(&m_look, &Look::changed, this, [this] { dress(); });
}

void TracePlot::show(const Trace& trace, const TraceEvaluation& evaluation,
                     const AskedOfTrace& asked, bool simulated)
{
    m_scene = std::make_shared<const TraceScene>(sceneOf(trace, evaluation, asked, simulated));
    m_sample.reset();
    m_saved->hide();
    m_exposure->setVisible(m_scene->hold.has_value());
    setAccessibleDescription(spokenTrace(trace, evaluation, asked, simulated));
    dress();
}

void TracePlot::dress()
{
    const QFont font = m_look.font(Type::body);
    m_legend->show(m_scene, m_look.colours(), font);
    if (!m_scene->seconds.empty()) {
        m_chart->show(m_scene, m_look.colours(), font);
    }
    m_chart->setVisible(!m_scene->seconds.empty());
    if (m_sample) {
        m_legend->read(m_sample);
        m_chart->readAt(m_scene->seconds[*m_sample]);
    }
}

std::pair<double, double> TracePlot::viewed() const
{
    return {m_chart->viewed().lower, m_chart->viewed().upper};
}

QString TracePlot::said() const
{
    return m_legend->said();
}

void TracePlot::zoom(double factor, std::optional<double> about)
{
    const QCPRange seen = m_chart->viewed();
    if (!about && m_sample && seen.contains(m_scene->seconds[*m_sample])) {
        about = m_scene->seconds[*m_sample];
    }
    const double fixed = about.value_or(seen.center());
    m_chart->view(fixed - (fixed - seen.lower) / factor, fixed + (seen.upper - fixed) / factor);
}

void TracePlot::pan(double part)
{
    const QCPRange seen = m_chart->viewed();
    m_chart->view(seen.lower + part * seen.size(), seen.upper + part * seen.size());
}

void TracePlot::showAll()
{
    m_chart->view(m_scene->begin(), m_scene->end());
}

void TracePlot::showExposure()
{
    if (m_scene->hold) {
        const double more = beside * (m_scene->hold->to - m_scene->hold->from);
        m_chart->view(m_scene->hold->from - more, m_scene->hold->to + more);
    }
}

void TracePlot::readAt(double seconds)
{
    if (m_scene->seconds.empty()) {
        return;
    }
    m_sample = m_scene->sampleAt(seconds);
    m_legend->read(m_sample);
    m_chart->readAt(m_scene->seconds[*m_sample]);
}

void TracePlot::readNext(int step)
{
    if (m_scene->seconds.empty()) {
        return;
    }
    const auto last = static_cast<std::ptrdiff_t>(m_scene->seconds.size()) - 1;
    const std::ptrdiff_t now = static_cast<std::ptrdiff_t>(
        m_sample ? *m_sample : m_scene->sampleAt(m_chart->viewed().center()));
    const std::ptrdiff_t next = std::clamp<std::ptrdiff_t>(now + (m_sample ? step : 0), 0, last);
    readAt(m_scene->seconds[static_cast<std::size_t>(next)]);
    const double at = m_scene->seconds[static_cast<std::size_t>(next)];
    if (!m_chart->viewed().contains(at)) {
        const double half = m_chart->viewed().size() / 2;
        m_chart->view(at - half, at + half);
    }
}

void TracePlot::readNothing()
{
    m_sample.reset();
    m_legend->read(std::nullopt);
    m_chart->readAt(std::nullopt);
}

void TracePlot::keyPressEvent(QKeyEvent* event)
{
    const bool isShifted = event->modifiers().testFlag(Qt::ShiftModifier);
    switch (event->key()) {
    case Qt::Key_Left: isShifted ? readNext(-1) : pan(-panStep); return;
    case Qt::Key_Right: isShifted ? readNext(1) : pan(panStep); return;
    case Qt::Key_Plus:
    case Qt::Key_Equal: zoom(zoomStep); return;
    case Qt::Key_Minus: zoom(1 / zoomStep); return;
    case Qt::Key_0: showAll(); return;
    case Qt::Key_E: showExposure(); return;
    default: QWidget::keyPressEvent(event);
    }
}

bool TracePlot::eventFilter(QObject* watched, QEvent* event)
{
    switch (event->type()) {
    case QEvent::MouseButtonPress:
        setFocus(Qt::MouseFocusReason);
        m_draggedFrom = static_cast<QMouseEvent*>(event)->position().x();
        return true;
    case QEvent::MouseButtonRelease: m_draggedFrom.reset(); return true;
    case QEvent::MouseButtonDblClick: showAll(); return true;
    case QEvent::MouseMove: {
        const double x = static_cast<QMouseEvent*>(event)->position().x();
        if (m_draggedFrom) {
            const double by = m_chart->secondsAt(*m_draggedFrom) - m_chart->secondsAt(x);
            const QCPRange seen = m_chart->viewed();
            m_chart->view(seen.lower + by, seen.upper + by);
            m_draggedFrom = x;
        }
        readAt(m_chart->secondsAt(x));
        return true;
    }
    case QEvent::Leave: readNothing(); return false;
    case QEvent::Wheel: {
        const auto* const wheel = static_cast<QWheelEvent*>(event);
        if (!hasFocus() || wheel->angleDelta().y() == 0) {
            event->ignore(); // the page scrolls
            return true;
        }
        constexpr double notch = 120;
        zoom(std::pow(zoomStep, wheel->angleDelta().y() / notch),
             m_chart->secondsAt(wheel->position().x()));
        event->accept();
        return true;
    }
    default: return QWidget::eventFilter(watched, event);
    }
}

void TracePlot::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    update();
}

void TracePlot::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    update();
}

void TracePlot::paintEvent(QPaintEvent* /*event*/)
{
    if (hasFocus()) {
        QPainter painter(this);
        painter.setPen(QPen(m_look.colours().focus, 2));
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void TracePlot::askForFile()
{
    const QString kinds = canSaveSvg() ? tr("Pictures (*.png *.svg)") : tr("Pictures (*.png)");
    const QString file =
        QFileDialog::getSaveFileName(this, tr("Save picture"), QStringLiteral("trace.png"), kinds);
    if (file.isEmpty()) {
        return;
    }
    m_saved->setText(save(file) ? tr("The picture is in %1.").arg(file)
                                : tr("The picture could not be written to %1. Choose another "
                                     "folder, or make room there.")
                                      .arg(file));
    m_saved->show();
}

} // namespace loadwarden::ui
