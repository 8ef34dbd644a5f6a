#include "ui/today/day_track.h"

#include "ui/parts/clock_text.h"
#include "ui/today/cycle_text.h"

#include <QFontMetricsF>
#include <QHelpEvent>
#include <QKeyEvent>
#include <QPainter>
#include <QToolTip>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int side = 6; ///< left and right of the line
constexpr int barHeight = 34;
constexpr int glyphSide = 18;
constexpr double leastBar = 22; ///< in which a mark has room
constexpr Duration hour = Duration::hours(1);

} // namespace

DayTrack::DayTrack(Look& look, QWidget* parent) : QWidget(parent), m_look(look)
{
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

int DayTrack::lineHeight() const
{
    return static_cast<int>(QFontMetricsF(m_look.font(Type::body)).height());
}

QSize DayTrack::sizeHint() const
{
    return {720, barHeight + lineHeight() + 12};
}

void DayTrack::show(const QString& name, std::vector<DayCycle> cycles, Span span,
                    const HouseStyle& style)
{
    const std::string was = m_selected ? m_cycles[static_cast<std::size_t>(*m_selected)].id : "";
    m_cycles = std::move(cycles);
    m_span = span;
    m_style = style;
    m_selected.reset();
    const auto again = std::ranges::find(m_cycles, was, &DayCycle::id);
    if (again != m_cycles.end() && !was.empty()) {
        m_selected = static_cast<int>(again - m_cycles.begin());
    }
    setAccessibleName(tr("Day of %1, %2 cycles").arg(name).arg(m_cycles.size()));
    QStringList all;
    for (const DayCycle& cycle : m_cycles) {
        all << cycleText(cycle, m_span.now, m_style);
    }
    setAccessibleDescription(all.join(QStringLiteral("; ")));
    update();
}

double DayTrack::x(Instant moment) const
{
    const double width = this->width() - 2.0 * side;
    const auto whole = static_cast<double>((m_span.end - m_span.begin).ms);
    const auto part = static_cast<double>((moment - m_span.begin).ms);
    return side + width * std::clamp(whole > 0 ? part / whole : 0.0, 0.0, 1.0);
}

QRectF DayTrack::barOf(const DayCycle& cycle) const
{
    const Instant start = cycle.start.value_or(m_span.begin);
    const double from = x(start);
    const double to = x(cycle.end.value_or(std::max(start, m_span.now)));
    return {from, 3.0, std::max(to - from, leastBar), barHeight};
}

std::optional<int> DayTrack::cycleAt(const QPointF& point) const
{
    for (std::size_t i = 0; i < m_cycles.size(); ++i) {
        if (barOf(m_cycles[i]).adjusted(-1, -3, 1, 4).contains(point)) {
            return static_cast<int>(i);
        }
    }
    return std::nullopt;
}

void DayTrack::select(std::optional<int> index)
{
    m_selected = index;
    emit selected(index ? cycleText(m_cycles[static_cast<std::size_t>(*index)], m_span.now, m_style)
                        : QString());
    update();
}

void DayTrack::paintHours(QPainter& painter) const
{
    const Colours& colours = m_look.colours();
    const QFont font = m_look.font(Type::body);
    const QFontMetricsF metrics(font);
    painter.setFont(font);
    const double base = 3.0 + barHeight + 3.0;
    painter.setPen(QPen(colours.edge, 1.0));
    painter.drawLine(QPointF(side, base), QPointF(width() - side, base));
    const double hourWidth = x(m_span.begin + hour) - x(m_span.begin);
    const double needed = metrics.horizontalAdvance(QStringLiteral("00:00")) + 16.0;
    int step = 1;
    while (step * hourWidth < needed && step < 12) {
        step *= 2;
    }
    int count = 0;
    for (Instant at = m_span.begin; at <= m_span.end; at = at + hour, ++count) {
        const bool isLabelled = count % step == 0 && at < m_span.end;
        painter.setPen(QPen(isLabelled ? colours.edge : colours.line, 1.0));
        painter.drawLine(QPointF(x(at), base), QPointF(x(at), base + (isLabelled ? 6 : 3)));
        // Not under the line of now, which would cross it.
        const double left = x(at) + 4.0;
        const bool isCrossed = x(m_span.now) > left - 2.0 && x(m_span.now) < left + needed - 12.0
                               && m_span.now >= m_span.begin && m_span.now <= m_span.end;
        if (isLabelled && !isCrossed) {
            painter.setPen(colours.muted);
            painter.drawText(QPointF(left, base + 3.0 + metrics.ascent()),
                             clockText(at, m_style.zone));
        }
    }
}

void DayTrack::paintCycle(QPainter& painter, int index) const
{
    const Colours& colours = m_look.colours();
    const DayCycle& cycle = m_cycles[static_cast<std::size_t>(index)];
    const CycleMark mark = markOf(cycle);
    const Tone tone = toneOf(colours, mark.tone);
    const QRectF bar = barOf(cycle).adjusted(0.5, 0.5, -1.5, -0.5);
    const bool isOpen = !cycle.isTest() && !cycle.signedAs;
    painter.setPen(QPen(tone.ink, 1.5, isOpen ? Qt::DashLine : Qt::SolidLine));
    painter.setBrush(tone.soft);
    painter.drawRoundedRect(bar, 4.0, 4.0);
    QRectF glyph(0, 0, glyphSide, glyphSide);
    glyph.moveCenter(bar.center());
    paintGlyph(painter, mark.glyph, glyph, tone.ink, tone.soft);
    if (m_selected == index) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(hasFocus() ? colours.focus : colours.ink, 2.5));
        painter.drawRoundedRect(bar.adjusted(-1.5, -1.5, 1.5, 1.5), 5.0, 5.0);
    }
}

void DayTrack::paintNow(QPainter& painter) const
{
    if (m_span.now < m_span.begin || m_span.now > m_span.end) {
        return;
    }
    const Colours& colours = m_look.colours();
    const double at = x(m_span.now);
    painter.setPen(QPen(colours.accent, 2.0));
    painter.drawLine(QPointF(at, 0.0), QPointF(at, 3.0 + barHeight + 9.0));
}

void DayTrack::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours& colours = m_look.colours();
    painter.fillRect(QRectF(side, 3.0, width() - 2.0 * side, barHeight), colours.window);
    if (m_span.now > m_span.begin) {
        // What is still to come is lighter than what was.
        painter.fillRect(
            QRectF(QPointF(x(m_span.now), 3.0), QPointF(width() - side, 3.0 + barHeight)),
            colours.surface);
    }
    painter.setPen(QPen(colours.line, 1.0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(QRectF(side, 3.0, width() - 2.0 * side, barHeight));
    paintHours(painter);
    for (std::size_t i = 0; i < m_cycles.size(); ++i) {
        paintCycle(painter, static_cast<int>(i));
    }
    paintNow(painter);
    if (hasFocus() && !m_selected) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colours.focus, 2.0));
        painter.drawRect(QRectF(rect()).adjusted(1, 1, -1, -1));
    }
}

bool DayTrack::event(QEvent* event)
{
    if (event->type() == QEvent::ToolTip) {
        const auto* const help = static_cast<QHelpEvent*>(event);
        if (const auto index = cycleAt(QPointF(help->pos()))) {
            QToolTip::showText(
                help->globalPos(),
                cycleText(m_cycles[static_cast<std::size_t>(*index)], m_span.now, m_style));
        } else {
            QToolTip::hideText();
        }
        return true;
    }
    return QWidget::event(event);
}

void DayTrack::keyPressEvent(QKeyEvent* event)
{
    const int count = static_cast<int>(m_cycles.size());
    const int key = event->key();
    if (count > 0 && key == Qt::Key_Right) {
        select(m_selected ? std::min(*m_selected + 1, count - 1) : 0);
    } else if (count > 0 && key == Qt::Key_Left) {
        select(m_selected ? std::max(*m_selected - 1, 0) : count - 1);
    } else if (count > 0 && key == Qt::Key_Home) {
        select(0);
    } else if (count > 0 && key == Qt::Key_End) {
        select(count - 1);
    } else if (m_selected
               && (key == Qt::Key_Return || key == Qt::Key_Enter || key == Qt::Key_Space)) {
        emit chosen(QString::fromStdString(m_cycles[static_cast<std::size_t>(*m_selected)].id));
    } else {
        QWidget::keyPressEvent(event);
    }
}

void DayTrack::mousePressEvent(QMouseEvent* event)
{
    const auto index = cycleAt(event->position());
    select(index);
    if (index) {
        emit chosen(QString::fromStdString(m_cycles[static_cast<std::size_t>(*index)].id));
    }
}

void DayTrack::focusInEvent(QFocusEvent* event)
{
    QWidget::focusInEvent(event);
    if (!m_selected && !m_cycles.empty()) {
        select(static_cast<int>(m_cycles.size()) - 1);
    }
}

void DayTrack::focusOutEvent(QFocusEvent* event)
{
    QWidget::focusOutEvent(event);
    select(std::nullopt);
}

} // namespace loadwarden::ui
