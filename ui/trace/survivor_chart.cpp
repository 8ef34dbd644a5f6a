#include "ui/trace/survivor_chart.h"

#include "ui/trace/power_text.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int highest = 8; ///< powers of ten
constexpr int lowest = -12;
constexpr int lineEvery = 2; ///< powers
constexpr double assurance = -6;

} // namespace

SurvivorChart::SurvivorChart(Look& look, QWidget* parent) : QWidget(parent), m_look(look)
{
    constexpr int height = 300;
    setMinimumSize(320, height);
    setAccessibleName(tr("Survivors over time"));
    connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
}

void SurvivorChart::show(double minutes, double rate, const Population& spores,
                         const Population& unit)
{
    m_minutes = minutes;
    m_rate = rate;
    m_spores = spores;
    m_unit = unit;
    const auto left = [&](const Population& each) {
        return powerText(survivorsOf(each.count, logReduction(rate * minutes, each.dMinutes)));
    };
    setAccessibleDescription(tr("After %1 minutes %2 spores of the biological indicator and %3 "
                                "germs of a unit are expected to survive.")
                                 .arg(minutes)
                                 .arg(left(spores), left(unit)));
    update();
}

void SurvivorChart::paintEvent(QPaintEvent* /*event*/)
{
    const Colours& colours = m_look.colours();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const QFont font = m_look.font(Type::body);
    painter.setFont(font);
    const QFontMetricsF metrics(font);
    const double labels = metrics.horizontalAdvance(powerText(1e-10)) + space::small;
    const QRectF in(labels, metrics.height() / 2, width() - labels - space::small,
                    height() - 2.5 * metrics.height());
    const double longest = std::max(2 * m_minutes, 1e-3);
    const auto x = [&](double minutes) { return in.left() + in.width() * minutes / longest; };
    const auto y = [&](double power) {
        return in.top() + in.height() * (highest - power) / (highest - lowest);
    };

    painter.fillRect(in, colours.field);
    for (int power = lowest; power <= highest; power += lineEvery) {
        painter.setPen(QPen(colours.line, 1));
        painter.drawLine(QPointF(in.left(), y(power)), QPointF(in.right(), y(power)));
        painter.setPen(colours.ink);
        QString says = powerText(std::pow(10.0, power));
        painter.drawText(
            QRectF(0, y(power) - metrics.height() / 2, labels - space::small, metrics.height()),
            Qt::AlignRight | Qt::AlignVCenter, says.remove(QLatin1String("1 × ")));
    }
    for (int part = 0; part <= 4; ++part) {
        const double at = longest * part / 4;
        const QString says = tr("%1 min").arg(QString::number(at, 'f', at < 10 ? 1 : 0));
        const double wide = metrics.horizontalAdvance(says);
        painter.drawText(QPointF(std::clamp(x(at) - wide / 2, 0.0, width() - wide),
                                 in.bottom() + metrics.height()),
                         says);
    }
    painter.setPen(QPen(colours.edge, 1));
    painter.drawRect(in);

    painter.setPen(QPen(colours.ink, 1, Qt::DashLine));
    painter.drawLine(QPointF(in.left(), y(assurance)), QPointF(in.right(), y(assurance)));
    painter.drawText(QPointF(in.left() + space::small, y(assurance) - 4),
                     tr("10⁻⁶: one unit in a million is not sterile"));
    painter.setPen(QPen(colours.focus, 1.5));
    painter.drawLine(QPointF(x(m_minutes), in.top()), QPointF(x(m_minutes), in.bottom()));

    painter.save();
    painter.setClipRect(in);
    const auto drawLine = [&](const Population& each, const QPen& pen, const QString& name,
                              double nameAt) {
        const double first = std::log10(std::max(each.count, 1e-300));
        const double fall = m_rate / each.dMinutes;
        painter.setPen(pen);
        painter.drawLine(QPointF(x(0), y(first)),
                         QPointF(x(longest), y(std::max(first - fall * longest, -1e4))));
        painter.setPen(pen.color());
        const double wide = metrics.horizontalAdvance(name);
        painter.drawText(QPointF(in.right() - wide - space::small, nameAt), name);
        painter.setPen(QPen(pen.color(), pen.widthF(), pen.style()));
        painter.drawLine(QPointF(in.right() - wide - 52, nameAt - metrics.ascent() / 3),
                         QPointF(in.right() - wide - 16, nameAt - metrics.ascent() / 3));
    };
    drawLine(m_spores, QPen(colours.accent, 2.5), tr("spores of the biological indicator"),
             in.top() + metrics.height());
    drawLine(m_unit, QPen(colours.waiting.ink, 2.5, Qt::DashLine), tr("germs of a unit"),
             in.top() + 2.2 * metrics.height());
    painter.restore();
}

} // namespace loadwarden::ui
