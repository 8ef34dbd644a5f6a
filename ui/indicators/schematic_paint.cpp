#include "ui/indicators/schematic_paint.h"

#include "core/indicators/front.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int margin = space::small; ///< left and right of a strip, for half a grip
constexpr int bracket = 6;           ///< height of what says how far a word reaches
constexpr double inset = 0.22;       ///< of the strip's height, above and below what has changed

struct StripWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::StripWords)
};

int headOf(const QFontMetrics& metrics)
{
    return metrics.height() + bracket + space::hair;
}

/// From the one place to the other, with its ends bent towards the strip.
void paintBracket(QPainter& painter, double from, double to, double y, double bend)
{
    painter.drawPolyline(QPolygonF({{from, y + bend}, {from, y}, {to, y}, {to, y + bend}}));
}

} // namespace

StripPlace::StripPlace(const QFontMetrics& metrics, double width, double height,
                       int boundaryThousandths)
    : strip(margin, headOf(metrics), width - 2 * margin, height)
{
    boundary = xOf(boundaryThousandths);
}

double StripPlace::xOf(int thousandths) const
{
    return strip.left() + strip.width() * thousandths / wholeStrip;
}

int StripPlace::thousandthsAt(double x) const
{
    const double part = (x - strip.left()) / std::max(strip.width(), 1.0);
    return static_cast<int>(std::lround(std::clamp(part, 0.0, 1.0) * wholeStrip));
}

int heightOfStrip(const QFontMetrics& metrics, int height)
{
    return 2 * headOf(metrics) + height;
}

void paintStrip(QPainter& painter, const Colours& colours, const StripPlace& place,
                std::optional<int> front)
{
    const QRectF& strip = place.strip;
    painter.fillRect(strip, colours.field);
    if (front) {
        const double end = place.xOf(*front);
        const double away = strip.height() * inset;
        painter.fillRect(
            QRectF(strip.left(), strip.top() + away, end - strip.left(), strip.height() - 2 * away),
            QBrush(colours.ink, Qt::BDiagPattern));
        painter.setPen(QPen(colours.ink, 2));
        painter.drawLine(QPointF(end, strip.top() + away), QPointF(end, strip.bottom() - away));
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.edge, 2));
    painter.drawRect(strip);
    painter.setPen(QPen(colours.accent, 4, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(QPointF(place.boundary, strip.top() - bracket),
                     QPointF(place.boundary, strip.bottom() + bracket));
    painter.setPen(QPen(colours.edge, 1));
    const double over = strip.top() - space::hair - bracket / 2.0;
    const double under = strip.bottom() + space::hair + bracket / 2.0;
    paintBracket(painter, place.boundary + space::hair, strip.right(), over, bracket / 2.0);
    paintBracket(painter, strip.left(), place.boundary - space::hair, under, -bracket / 2.0);
    painter.setPen(colours.ink);
    const QFontMetrics metrics = painter.fontMetrics();
    const auto cut = [&](const QString& says) {
        return metrics.elidedText(says, Qt::ElideRight, static_cast<int>(strip.width()));
    };
    painter.drawText(QRectF(strip.left(), 0, strip.width(), metrics.height()), Qt::AlignRight,
                     cut(StripWords::tr("accept zone")));
    painter.drawText(QRectF(strip.left(), under + bracket / 2.0, strip.width(), metrics.height()),
                     Qt::AlignLeft, cut(StripWords::tr("short of the boundary")));
}

void paintPatch(QPainter& painter, const Colours& colours, const QRectF& patch, int changed)
{
    painter.fillRect(patch, colours.field);
    QRectF filled = patch;
    filled.setWidth(patch.width() * changed / wholeStrip);
    painter.fillRect(filled, QBrush(colours.ink, Qt::DiagCrossPattern));
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.edge, 2));
    painter.drawRect(patch);
}

void paintCell(QPainter& painter, const Colours& colours, const QRectF& cell, CellMark mark)
{
    painter.fillRect(cell, colours.field);
    switch (mark) {
    case CellMark::full: painter.fillRect(cell, QBrush(colours.ink, Qt::DiagCrossPattern)); break;
    case CellMark::part: painter.fillRect(cell, QBrush(colours.muted, Qt::BDiagPattern)); break;
    case CellMark::none: break;
    case CellMark::unmarked: {
        constexpr double dot = 0.08;
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.edge);
        painter.drawEllipse(cell.center(), cell.width() * dot, cell.width() * dot);
        break;
    }
    }
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.edge, 1));
    painter.drawRect(cell);
}

void paintSheet(QPainter& painter, const Colours& colours, const QRectF& square,
                const SheetCells& cells)
{
    const double side = square.width() / sheetSide;
    for (std::size_t cell = 0; cell < cells.size(); ++cell) {
        const int column = static_cast<int>(cell) % sheetSide;
        const int row = static_cast<int>(cell) / sheetSide;
        paintCell(painter, colours,
                  QRectF(square.left() + column * side, square.top() + row * side, side, side),
                  cells[cell]);
    }
}

} // namespace loadwarden::ui
