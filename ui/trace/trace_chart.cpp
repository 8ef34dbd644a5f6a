#include "ui/trace/trace_chart.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_style.h"

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int mainStretch = 10;
constexpr int stripStretch = 4;
constexpr double leastKelvinShown = 5;
constexpr double leastSecondsShown = 2;
constexpr double roomForNames = 0.22; ///< of the temperatures' height, above them

struct ChartText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceChart)
};

} // namespace

TraceChart::TraceChart() : m_margins(new QCPMarginGroup(this))
{
    setFocusPolicy(Qt::NoFocus);
    setMouseTracking(true);
    setNoAntialiasingOnDrag(true);
    setPlottingHint(QCP::phFastPolylines);
    plotLayout()->setRowSpacing(0);
    constexpr int leastHeight = 420; // temperatures, saturation and lethality below each other
    setMinimumSize(280, leastHeight);
    // Where there is room for names is known once the axes have theirs.
    connect(this, &QCustomPlot::afterLayout, this, [this] { placePhaseNames(); });
}

void TraceChart::show(std::shared_ptr<const TraceScene> scene, const Colours& colours,
                      const QFont& font)
{
    const bool isSame = m_scene == scene;
    const QCPRange before = m_view;
    m_scene = std::move(scene);
    m_colours = &colours;
    m_font = font;
    clearItems();
    clearPlottables();
    m_reading.clear();
    m_names.clear();
    plotLayout()->clear();
    setBackground(QBrush(colours.surface));

    m_main = addRect({}, mainStretch);
    m_main->axis(QCPAxis::atRight)->setVisible(m_scene->has(SeriesKind::pressure));
    m_main->axis(QCPAxis::atRight)->setTickLabels(true);
    m_main->axis(QCPAxis::atLeft)->setLabel(ChartText::tr("°C"));
    m_main->axis(QCPAxis::atRight)->setLabel(ChartText::tr("kPa absolute"));
    m_saturation =
        m_scene->has(SeriesKind::saturation)
            ? addRect(ChartText::tr("Measured minus saturation temperature, K"), stripStretch)
            : nullptr;
    m_lethality = m_scene->has(SeriesKind::lethality)
                      ? addRect(ChartText::tr("F0 of the coldest required sensor, min "
                                              "(%1 °C, z %2 K)")
                                    .arg(text(sayNumber(m_scene->f0.celsius, 2)),
                                         text(sayNumber(m_scene->f0.zKelvin, 2))),
                                stripStretch)
                      : nullptr;
    for (QCPAxisRect* const rect : axisRects()) {
        rect->setMarginGroup(QCP::msLeft | QCP::msRight, m_margins);
    }
    QCPAxis* const time = axisRects().back()->axis(QCPAxis::atBottom);
    time->setTickLabels(true);
    time->setLabel(ChartText::tr("Time since the trace began, h:mm:ss"));

    fitTicks();
    addPhases();
    for (std::size_t i = 0; i < m_scene->series.size(); ++i) {
        addSeries(i, axisOf(m_scene->series[i].kind));
    }
    addLimits();
    for (std::size_t i = 0; i < m_scene->series.size(); ++i) {
        addMarks(i);
    }
    for (QCPAxisRect* const rect : axisRects()) {
        auto* const line = new QCPItemStraightLine(this);
        line->setClipAxisRect(rect);
        for (QCPItemPosition* const point : line->positions()) {
            point->setAxes(rect->axis(QCPAxis::atBottom), rect->axis(QCPAxis::atLeft));
        }
        line->setPen(linePen(colours.focus, Qt::SolidLine, 1.5));
        line->setLayer(QStringLiteral("overlay"));
        line->setVisible(false);
        m_reading.push_back(line);
    }
    if (isSame) {
        view(before.lower, before.upper);
    } else {
        view(m_scene->begin(), m_scene->end());
    }
}

QCPAxis* TraceChart::axisOf(SeriesKind kind) const
{
    switch (kind) {
    case SeriesKind::temperature: return m_main->axis(QCPAxis::atLeft);
    case SeriesKind::pressure: return m_main->axis(QCPAxis::atRight);
    case SeriesKind::saturation: return m_saturation->axis(QCPAxis::atLeft);
    case SeriesKind::lethality: return m_lethality->axis(QCPAxis::atLeft);
    }
    return nullptr;
}

QPen TraceChart::linePen(const QColor& colour, Qt::PenStyle style, double width) const
{
    return QPen(colour, width, style, Qt::FlatCap);
}

QCPAxisRect* TraceChart::addRect(const QString& caption, int stretch)
{
    auto* const rect = new QCPAxisRect(this, true);
    const int row = plotLayout()->rowCount();
    plotLayout()->addElement(row, 0, rect);
    plotLayout()->setRowStretchFactor(row, stretch);
    dress(*rect);
    if (!caption.isEmpty()) {
        QCPItemText* const says = addText(rect, caption);
        says->setPositionAlignment(Qt::AlignLeft | Qt::AlignTop);
        says->position->setType(QCPItemPosition::ptAxisRectRatio);
        says->position->setAxisRect(rect);
        says->position->setCoords(0, 0);
        says->setPadding(QMargins(space::small, 2, space::small, 2));
        says->setBrush(QBrush(m_colours->surface));
    }
    return rect;
}

void TraceChart::dress(QCPAxisRect& rect)
{
    rect.setLayer(QStringLiteral("background")); // phases are painted on it
    rect.setBackground(QBrush(m_colours->field));
    rect.setMinimumMargins(QMargins(space::small, space::hair, space::small, space::hair));
    for (QCPAxis* const axis : rect.axes()) {
        axis->setLayer(QStringLiteral("axes"));
        axis->grid()->setLayer(QStringLiteral("grid"));
        axis->setVisible(axis->axisType() != QCPAxis::atRight);
        axis->setTickLabels(axis->axisType() == QCPAxis::atLeft);
        axis->setTicks(axis->axisType() != QCPAxis::atTop);
        const QPen pen = linePen(m_colours->edge, Qt::SolidLine, 1);
        axis->setBasePen(pen);
        axis->setTickPen(pen);
        axis->setSubTickPen(linePen(m_colours->line, Qt::SolidLine, 1));
        axis->setTickLabelColor(m_colours->ink);
        axis->setTickLabelFont(m_font);
        axis->setLabelColor(m_colours->ink);
        axis->setLabelFont(m_font);
        axis->grid()->setPen(linePen(m_colours->line, Qt::DotLine, 1));
        axis->grid()->setZeroLinePen(Qt::NoPen);
        axis->grid()->setVisible(axis->axisType() != QCPAxis::atRight);
    }
    const auto clock = QSharedPointer<QCPAxisTickerTime>::create();
    clock->setTimeFormat(QStringLiteral("%h:%m:%s"));
    clock->setFieldWidth(QCPAxisTickerTime::tuHours, 1);
    rect.axis(QCPAxis::atBottom)->setTicker(clock);
    rect.axis(QCPAxis::atLeft)->ticker()->setTickCount(4);
}

void TraceChart::addSeries(std::size_t place, QCPAxis* value)
{
    const TraceSeries& series = m_scene->series[place];
    QVector<QCPGraphData> points;
    points.reserve(static_cast<qsizetype>(m_scene->seconds.size()));
    for (std::size_t i = 0; i < m_scene->seconds.size(); ++i) {
        const double at = m_scene->seconds[i];
        if (i > 0 && at - m_scene->seconds[i - 1] > m_scene->mostStepSeconds
            && series.kind != SeriesKind::lethality) {
            points.push_back({(at + m_scene->seconds[i - 1]) / 2, notKnown});
        }
        points.push_back({at, series.values[i]});
    }
    QCPGraph* const graph = addGraph(value->axisRect()->axis(QCPAxis::atBottom), value);
    graph->data()->set(points, true);
    graph->setPen(penOf(series, *m_colours));
    graph->setAdaptiveSampling(true);
}

double TraceChart::secondsAt(double x) const
{
    return m_main == nullptr ? 0 : m_main->axis(QCPAxis::atBottom)->pixelToCoord(x);
}

QRect TraceChart::frame() const
{
    return m_main == nullptr ? QRect() : m_main->rect().united(axisRects().back()->rect());
}

void TraceChart::readAt(std::optional<double> seconds)
{
    for (QCPItemStraightLine* const line : m_reading) {
        line->setVisible(seconds.has_value());
        if (seconds) {
            line->point1->setCoords(*seconds, 0);
            line->point2->setCoords(*seconds, 1);
        }
    }
    if (m_scene) {
        layer(QStringLiteral("overlay"))->replot(); // lines stay as they are drawn
    }
}

void TraceChart::view(double from, double to)
{
    if (!m_scene) {
        return;
    }
    const double whole = m_scene->end() - m_scene->begin();
    const double length = std::clamp(to - from, std::min(leastSecondsShown, whole), whole);
    from = std::clamp((from + to - length) / 2, m_scene->begin(), m_scene->end() - length);
    m_view = {from, from + (length > 0 ? length : 1)};
    for (QCPAxisRect* const rect : axisRects()) {
        rect->axis(QCPAxis::atBottom)->setRange(m_view);
    }
    fitValues();
    replot(QCustomPlot::rpQueuedReplot);
}

void TraceChart::resizeEvent(QResizeEvent* event)
{
    QCustomPlot::resizeEvent(event);
    fitTicks();
}

void TraceChart::fitTicks()
{
    const int label = QFontMetrics(m_font).horizontalAdvance(QStringLiteral("00:00:00"));
    for (QCPAxisRect* const rect : axisRects()) {
        // A tick's label and as much again between two of them.
        rect->axis(QCPAxis::atBottom)->ticker()->setTickCount(std::max(2, width() / (2 * label)));
    }
}

void TraceChart::fitValues()
{
    const auto first = static_cast<std::size_t>(
        std::ranges::lower_bound(m_scene->seconds, m_view.lower) - m_scene->seconds.begin());
    const auto last = static_cast<std::size_t>(
        std::ranges::upper_bound(m_scene->seconds, m_view.upper) - m_scene->seconds.begin());
    double coldest = unbounded;
    double hottest = -unbounded;
    double mostKPa = 0;
    double mostKelvin = 0;
    double mostMinutes = 0;
    for (const TraceSeries& series : m_scene->series) {
        const bool isFitted = series.kind == SeriesKind::temperature;
        const std::size_t end = isFitted ? last : series.values.size();
        for (std::size_t i = isFitted ? first : 0; i < end; ++i) {
            const double value = series.values[i]; // comparisons pass over NaN
            switch (series.kind) {
            case SeriesKind::temperature:
                coldest = value < coldest ? value : coldest;
                hottest = value > hottest ? value : hottest;
                break;
            case SeriesKind::pressure: mostKPa = value > mostKPa ? value : mostKPa; break;
            case SeriesKind::saturation: break;
            case SeriesKind::lethality:
                mostMinutes = value > mostMinutes ? value : mostMinutes;
                break;
            }
        }
    }
    for (const TraceMark& mark : m_scene->marks) {
        if (m_scene->series[mark.series].kind == SeriesKind::saturation) {
            mostKelvin =
                std::max(mostKelvin, std::abs(m_scene->series[mark.series].values[mark.worst]));
        }
    }
    if (coldest <= hottest) {
        const double middle = (coldest + hottest) / 2;
        const double height = std::max(hottest - coldest, leastKelvinShown);
        m_main->axis(QCPAxis::atLeft)
            ->setRange(middle - 0.58 * height, middle + (0.55 + roomForNames) * height);
    }
    m_main->axis(QCPAxis::atRight)->setRange(0, std::max(mostKPa, 1.0) * (1.05 + roomForNames));
    if (m_saturation != nullptr) {
        const double limit = std::isnan(m_scene->saturationKelvin) ? 2 : m_scene->saturationKelvin;
        const double shown = std::max(1.6 * limit, 1.15 * mostKelvin);
        // Above the upper limit there is room for the caption.
        m_saturation->axis(QCPAxis::atLeft)->setRange(-shown, shown * 1.6);
    }
    if (m_lethality != nullptr) {
        m_lethality->axis(QCPAxis::atLeft)->setRange(0, std::max(mostMinutes, 1.0) * 1.5);
    }
}

} // namespace loadwarden::ui
