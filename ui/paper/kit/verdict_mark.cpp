#include "ui/paper/kit/verdict_mark.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <initializer_list>

namespace loadwarden::paper {
namespace {

enum class Shape : std::uint8_t { disc, square, triangle };

/// In a square of 16 units.
QPainterPath outlineOf(Shape shape)
{
    QPainterPath path;
    switch (shape) {
    case Shape::disc: path.addEllipse(1, 1, 14, 14); break;
    case Shape::square: path.addRect(1.5, 1.5, 13, 13); break;
    case Shape::triangle:
        path.addPolygon(QPolygonF({{0.8, 2}, {15.2, 2}, {8, 14.8}}));
        path.closeSubpath();
        break;
    }
    return path;
}

QPainterPath line(std::initializer_list<QPointF> points)
{
    QPainterPath path(*points.begin());
    for (const QPointF& point : points) {
        path.lineTo(point);
    }
    return path;
}

QPainterPath tick()
{
    return line({{4.6, 8.2}, {7.1, 10.8}, {11.6, 5.4}});
}

QPainterPath bars()
{
    QPainterPath path = line({{5.8, 5}, {5.8, 11}});
    path.addPath(line({{10.2, 5}, {10.2, 11}}));
    return path;
}

QPainterPath stroke()
{
    return line({{5.4, 5.4}, {10.6, 5.4}});
}

void draw(QPainter& painter, const QRectF& in, Shape shape, bool isFilled, const QPainterPath& sign)
{
    painter.save();
    const double side = std::min(in.width(), in.height());
    painter.translate(in.center() - QPointF(side / 2, side / 2));
    painter.scale(side / 16, side / 16);
    const QPainterPath outline = outlineOf(shape);
    painter.fillPath(outline, isFilled ? Qt::black : Qt::white);
    painter.strokePath(outline, QPen(Qt::black, 1.2));
    painter.strokePath(sign, QPen(isFilled ? Qt::white : Qt::black, 2, Qt::SolidLine, Qt::RoundCap,
                                  Qt::RoundJoin));
    painter.restore();
}

} // namespace

void paintMark(QPainter& painter, Verdict verdict, const QRectF& in)
{
    switch (verdict) {
    case Verdict::release: draw(painter, in, Shape::disc, true, tick()); return;
    case Verdict::quarantine: draw(painter, in, Shape::square, true, bars()); return;
    case Verdict::reprocess: draw(painter, in, Shape::triangle, true, stroke()); return;
    }
}

void paintMark(QPainter& painter, TestResult result, const QRectF& in)
{
    switch (result) {
    case TestResult::passed: draw(painter, in, Shape::disc, false, tick()); return;
    case TestResult::failed: draw(painter, in, Shape::triangle, false, stroke()); return;
    case TestResult::voided:
        draw(painter, in, Shape::disc, false, line({{4, 12}, {12, 4}}));
        return;
    case TestResult::pending:
        draw(painter, in, Shape::square, false, line({{5, 8}, {11, 8}}));
        return;
    }
}

} // namespace loadwarden::paper
