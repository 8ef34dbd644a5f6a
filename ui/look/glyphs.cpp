#include "ui/look/glyphs.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace loadwarden::ui {
namespace {

/// Draws in a square of 16 units.
class Drawing {
public:
    Drawing(QPainter& painter, const QRectF& in, const QColor& ink, const QColor& on)
        : m_painter(painter), m_ink(ink), m_on(on)
    {
        const qreal side = std::min(in.width(), in.height());
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing);
        painter.translate(in.center());
        painter.scale(side / 16.0, side / 16.0);
        painter.translate(-8.0, -8.0);
    }
    ~Drawing() { m_painter.restore(); }
    Drawing(const Drawing&) = delete;
    Drawing& operator=(const Drawing&) = delete;

    void filled(const QPainterPath& path) { m_painter.fillPath(path, m_ink); }
    void outlined(const QPainterPath& path)
    {
        m_painter.fillPath(path, m_on);
        stroked(path, m_ink, 1.8);
    }
    void over(const QPainterPath& path, qreal width = 2.0) { stroked(path, m_on, width); }
    void mark(const QPainterPath& path, qreal width = 2.0) { stroked(path, m_ink, width); }

private:
    void stroked(const QPainterPath& path, const QColor& colour, qreal width)
    {
        m_painter.strokePath(path, QPen(colour, width, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    }

    QPainter& m_painter;
    QColor m_ink;
    QColor m_on;
};

QPainterPath lines(std::initializer_list<QPointF> points)
{
    QPainterPath path(*points.begin());
    for (const QPointF& point : points) {
        path.lineTo(point);
    }
    return path;
}

QPainterPath disc()
{
    QPainterPath path;
    path.addEllipse(1.2, 1.2, 13.6, 13.6);
    return path;
}

QPainterPath square()
{
    QPainterPath path;
    path.addRoundedRect(1.6, 1.6, 12.8, 12.8, 1.6, 1.6);
    return path;
}

QPainterPath triangle()
{
    QPainterPath path = lines({{0.6, 1.6}, {15.4, 1.6}, {8.0, 15.2}});
    path.closeSubpath();
    return path;
}

QPainterPath tick()
{
    return lines({{4.8, 8.3}, {7.1, 10.6}, {11.4, 5.7}});
}

QPainterPath bars()
{
    QPainterPath path = lines({{5.8, 5.2}, {5.8, 10.8}});
    path.addPath(lines({{10.2, 5.2}, {10.2, 10.8}}));
    return path;
}

QPainterPath stroke()
{
    return lines({{5.2, 5.4}, {10.8, 5.4}});
}

QPainterPath chamber()
{
    QPainterPath path;
    path.addRoundedRect(1.5, 1.5, 13.0, 13.0, 4.0, 4.0);
    return path;
}

} // namespace

void paintGlyph(QPainter& painter, Glyph glyph, const QRectF& in, const QColor& ink,
                const QColor& on)
{
    Drawing drawing(painter, in, ink, on);
    switch (glyph) {
    case Glyph::release:
        drawing.filled(disc());
        drawing.over(tick());
        break;
    case Glyph::quarantine:
        drawing.filled(square());
        drawing.over(bars());
        break;
    case Glyph::reprocess:
        drawing.filled(triangle());
        drawing.over(stroke());
        break;
    case Glyph::passed:
        drawing.outlined(disc());
        drawing.mark(tick());
        break;
    case Glyph::failed:
        drawing.outlined(triangle());
        drawing.mark(stroke());
        break;
    case Glyph::voided:
        drawing.outlined(disc());
        drawing.mark(lines({{3.6, 12.4}, {12.4, 3.6}}), 1.8);
        break;
    case Glyph::pending:
        drawing.outlined(square());
        drawing.mark(lines({{5.0, 8.0}, {11.0, 8.0}}));
        break;
    case Glyph::running: {
        QPainterPath path;
        path.arcMoveTo(2.0, 2.0, 12.0, 12.0, 90.0);
        path.arcTo(2.0, 2.0, 12.0, 12.0, 90.0, -270.0);
        drawing.mark(path, 2.4);
        break;
    }
    case Glyph::note: {
        QPainterPath path;
        path.addEllipse(5.0, 5.0, 6.0, 6.0);
        drawing.filled(path);
        break;
    }
    case Glyph::loadwarden:
        drawing.mark(chamber(), 2.0);
        drawing.mark(lines({{5.0, 10.8}, {11.0, 10.8}}), 1.8);
        drawing.mark(lines({{5.4, 7.0}, {7.4, 8.6}, {10.9, 4.9}}), 1.8);
        break;
    }
}

Glyph glyphOf(Verdict verdict)
{
    return verdict == Verdict::release      ? Glyph::release
           : verdict == Verdict::quarantine ? Glyph::quarantine
                                            : Glyph::reprocess;
}

Glyph glyphOf(TestResult result)
{
    switch (result) {
    case TestResult::failed: return Glyph::failed;
    case TestResult::voided: return Glyph::voided;
    case TestResult::pending: return Glyph::pending;
    case TestResult::passed: return Glyph::passed;
    }
    return Glyph::pending;
}

} // namespace loadwarden::ui
