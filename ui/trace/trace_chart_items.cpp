// What stands on the picture besides its lines: phases, limits, and marks of what is beyond them.
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_chart.h"

#include <cmath>

namespace loadwarden::ui {
namespace {

struct ChartText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceChart)
};

} // namespace

QCPItemText* TraceChart::addText(QCPAxisRect* rect, const QString& says)
{
    auto* const item = new QCPItemText(this);
    item->setLayer(QStringLiteral("overlay"));
    item->setClipAxisRect(rect);
    item->setClipToAxisRect(true);
    item->setText(says);
    item->setFont(m_font);
    item->setColor(m_colours->ink);
    return item;
}

void TraceChart::addPhases()
{
    bool isTinted = false;
    for (const ScenePhase& phase : m_scene->phases) {
        const QColor fill = phase.isExposure ? m_colours->accentSoft
                            : isTinted       ? m_colours->neutral.soft
                                             : m_colours->field;
        isTinted = !isTinted;
        for (QCPAxisRect* const rect : axisRects()) {
            auto* const area = new QCPItemRect(this);
            area->setLayer(QStringLiteral("background"));
            area->setClipAxisRect(rect);
            area->setPen(Qt::NoPen);
            area->setBrush(fill);
            const std::pair<QCPItemPosition*, double> corners[] = {{area->topLeft, phase.from},
                                                                   {area->bottomRight, phase.to}};
            for (const auto& [corner, at] : corners) {
                corner->setAxisRect(rect);
                corner->setAxes(rect->axis(QCPAxis::atBottom), rect->axis(QCPAxis::atLeft));
                corner->setTypeX(QCPItemPosition::ptPlotCoords);
                corner->setTypeY(QCPItemPosition::ptAxisRectRatio);
                corner->setCoords(at, corner == area->topLeft ? 0 : 1);
            }
        }
        QCPItemText* const name = addText(m_main, phase.name);
        name->position->setAxisRect(m_main);
        name->position->setAxes(m_main->axis(QCPAxis::atBottom), m_main->axis(QCPAxis::atLeft));
        name->position->setTypeX(QCPItemPosition::ptPlotCoords);
        name->position->setTypeY(QCPItemPosition::ptAxisRectRatio);
        m_names.emplace_back(name, phase);
    }
}

/// A name stands where its phase can be seen: across, upright in a narrow one, or not at all.
void TraceChart::placePhaseNames()
{
    if (m_names.empty()) {
        return;
    }
    const QFontMetricsF metrics(m_font);
    const double perSecond = m_main->width() / std::max(m_view.size(), 1e-9);
    for (const auto& [name, phase] : m_names) {
        const double from = std::max(phase.from, m_view.lower);
        const double to = std::min(phase.to, m_view.upper);
        const double room = (to - from) * perSecond;
        const double needs = metrics.horizontalAdvance(phase.name) + space::small;
        const bool isAcross = room >= needs;
        const bool isUpright =
            !isAcross && room >= metrics.height() && needs <= 0.45 * m_main->height();
        name->setVisible(isAcross || isUpright);
        name->setRotation(isUpright ? -90 : 0);
        name->setPositionAlignment(isUpright ? Qt::AlignRight | Qt::AlignVCenter
                                             : Qt::AlignTop | Qt::AlignHCenter);
        name->position->setCoords((from + to) / 2,
                                  static_cast<double>(space::hair) / std::max(m_main->height(), 1));
    }
}

void TraceChart::addLimits()
{
    const Band& band = m_scene->band;
    const auto celsius = [](double value) {
        return QString::number(value, 'f', 1) + QStringLiteral(" °C");
    };
    addLimit(m_main, QCPAxis::atLeft, band.leastCelsius,
             ChartText::tr("at least %1").arg(celsius(band.leastCelsius)), false);
    addLimit(m_main, QCPAxis::atLeft, band.mostCelsius,
             ChartText::tr("at most %1").arg(celsius(band.mostCelsius)), true);
    if (m_scene->has(SeriesKind::pressure)) {
        addLimit(m_main, QCPAxis::atRight, band.leastKPa,
                 ChartText::tr("at least %1 kPa").arg(band.leastKPa, 0, 'f', 1), false);
        addLimit(m_main, QCPAxis::atRight, band.mostKPa,
                 ChartText::tr("at most %1 kPa").arg(band.mostKPa, 0, 'f', 1), true);
    }
    if (m_saturation != nullptr) {
        const double most = m_scene->saturationKelvin;
        const QString number = text(sayNumber(most, 1));
        addLimit(m_saturation, QCPAxis::atLeft, most, QStringLiteral("+%1 K").arg(number), true);
        addLimit(m_saturation, QCPAxis::atLeft, -most, QStringLiteral("−%1 K").arg(number), false);
        addLimit(m_saturation, QCPAxis::atLeft, 0, {}, false);
    }
}

void TraceChart::addLimit(QCPAxisRect* rect, QCPAxis::AxisType side, double at, const QString& says,
                          bool isAbove)
{
    if (!std::isfinite(at)) {
        return;
    }
    auto* const line = new QCPItemStraightLine(this);
    line->setClipAxisRect(rect);
    for (QCPItemPosition* const point : line->positions()) {
        point->setAxes(rect->axis(QCPAxis::atBottom), rect->axis(side));
    }
    line->point1->setCoords(0, at);
    line->point2->setCoords(1, at);
    line->setPen(linePen(says.isEmpty() ? m_colours->edge : m_colours->ink,
                         says.isEmpty() ? Qt::SolidLine : Qt::DashLine, 1));
    if (says.isEmpty()) {
        return;
    }
    QCPItemText* const name = addText(rect, says);
    const bool isLeft = side == QCPAxis::atLeft;
    name->position->setAxisRect(rect);
    name->position->setAxes(rect->axis(QCPAxis::atBottom), rect->axis(side));
    name->position->setTypeX(QCPItemPosition::ptAxisRectRatio);
    name->position->setTypeY(QCPItemPosition::ptPlotCoords);
    name->position->setCoords(isLeft ? 0 : 1, at);
    name->setPositionAlignment((isLeft ? Qt::AlignLeft : Qt::AlignRight)
                               | (isAbove ? Qt::AlignBottom : Qt::AlignTop));
    name->setPadding(QMargins(space::small, 1, space::small, 1));
}

/// What is beyond a limit is thicker, and each stretch of it has a sign at its worst place. One
/// graph for all of a line, since noise at a limit makes many stretches.
void TraceChart::addMarks(std::size_t place)
{
    const TraceSeries& series = m_scene->series[place];
    QVector<QCPGraphData> beyond;
    QVector<QCPGraphData> signs[2];
    for (const TraceMark& mark : m_scene->marks) {
        if (mark.series != place) {
            continue;
        }
        for (std::size_t i = mark.range.first; i <= mark.range.last; ++i) {
            beyond.push_back({m_scene->seconds[i], series.values[i]});
        }
        beyond.push_back({m_scene->seconds[mark.range.last], notKnown});
        signs[mark.isBelow ? 1 : 0].push_back(
            {m_scene->seconds[mark.worst], series.values[mark.worst]});
    }
    if (beyond.isEmpty()) {
        return;
    }
    QCPAxis* const value = axisOf(series.kind);
    QCPAxis* const time = value->axisRect()->axis(QCPAxis::atBottom);
    QCPGraph* const line = addGraph(time, value);
    line->data()->set(beyond, true);
    line->setPen(linePen(m_colours->bad.ink, Qt::SolidLine, 4));
    for (const bool isBelow : {false, true}) {
        QCPGraph* const sign = addGraph(time, value);
        sign->data()->set(signs[isBelow ? 1 : 0], true);
        sign->setLineStyle(QCPGraph::lsNone);
        constexpr double size = 13;
        sign->setScatterStyle(QCPScatterStyle(
            isBelow ? QCPScatterStyle::ssTriangleInverted : QCPScatterStyle::ssTriangle,
            QPen(m_colours->field, 1), QBrush(m_colours->bad.ink), size));
    }
}

} // namespace loadwarden::ui
