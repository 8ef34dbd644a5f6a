#include "ui/trace/trace_legend.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_style.h"

#include <QPainter>

#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int sample = 36; ///< length of a line's sample

/// The widest value that a line may have, so that nothing moves while the pointer does.
QString widest(SeriesKind kind)
{
    return kind == SeriesKind::saturation ? valueText(kind, -88.8) : valueText(kind, 888.8);
}

} // namespace

TraceLegend::TraceLegend(QWidget* parent) : QWidget(parent)
{
    QSizePolicy policy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
}

void TraceLegend::show(std::shared_ptr<const TraceScene> scene, const Colours& colours,
                       const QFont& font)
{
    m_scene = std::move(scene);
    m_colours = &colours;
    m_font = font;
    m_sample.reset();
    updateGeometry();
    update();
}

void TraceLegend::read(std::optional<std::size_t> place)
{
    m_sample = place;
    update();
}

QString TraceLegend::said() const
{
    if (!m_scene || !m_sample) {
        return {};
    }
    QStringList parts{tr("at %1").arg(text(sayTraceTime(m_scene->seconds[*m_sample])))};
    for (const TraceSeries& series : m_scene->series) {
        const double value = series.values[*m_sample];
        if (!std::isnan(value)) {
            parts += tr("%1 %2", "what is measured, its value")
                         .arg(series.name, valueText(series.kind, value));
        }
    }
    return parts.join(QStringLiteral("; "));
}

int TraceLegend::heightForWidth(int width) const
{
    return paint(nullptr, width);
}

QSize TraceLegend::sizeHint() const
{
    constexpr int usual = 900;
    return {usual, heightForWidth(usual)};
}

QSize TraceLegend::minimumSizeHint() const
{
    return {200, QFontMetrics(m_font).height() + space::small};
}

int TraceLegend::paint(QPainter* painter, int width) const
{
    if (!m_scene) {
        return 0;
    }
    const QFontMetrics metrics(m_font);
    QFont strong = m_font;
    strong.setBold(true);
    const QFontMetrics strongMetrics(strong);
    const int line = metrics.height() + space::hair;
    int x = 0;
    int y = 0;
    const auto put = [&](int needs) {
        if (x > 0 && x + needs > width) {
            x = 0;
            y += line;
        }
    };
    const auto say = [&](const QString& says, const QColor& colour, const QFont& font, int at) {
        if (painter != nullptr) {
            painter->setFont(font);
            painter->setPen(colour);
            painter->drawText(at, y + metrics.ascent(), says);
        }
    };
    const auto heading = [&](const QString& says, const QColor& colour) {
        const int needs = strongMetrics.horizontalAdvance(says) + space::medium;
        put(needs);
        say(says, colour, strong, x);
        x += needs;
    };
    if (m_scene->simulated) {
        heading(tr("Simulated: no sterilizer wrote this."), m_colours->waiting.ink);
    }
    heading(tr("At %1").arg(m_sample ? text(sayTraceTime(m_scene->seconds[*m_sample]))
                                     : QStringLiteral("–:––:––")),
            m_colours->ink);
    for (const TraceSeries& series : m_scene->series) {
        const int name = metrics.horizontalAdvance(series.name);
        const int value = strongMetrics.horizontalAdvance(widest(series.kind));
        put(sample + name + value + 2 * space::small);
        if (painter != nullptr) {
            painter->setPen(penOf(series, *m_colours));
            const double middle = y + metrics.height() / 2.0;
            painter->drawLine(QPointF(x, middle), QPointF(x + sample, middle));
        }
        say(series.name, m_colours->ink, m_font, x + sample + space::small);
        say(m_sample ? valueText(series.kind, series.values[*m_sample]) : QStringLiteral("–"),
            m_colours->ink, strong, x + sample + 2 * space::small + name);
        x += sample + name + value + 2 * space::small + space::large;
    }
    return y + line;
}

void TraceLegend::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paint(&painter, width());
}

} // namespace loadwarden::ui
