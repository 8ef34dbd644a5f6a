#include "ui/paper/kit/indicator_drawing.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QPainter>

#include <algorithm>
#include <span>

namespace loadwarden::paper {
namespace {

constexpr double boundaryShare = 0.55; ///< of a strip
constexpr double pastShare = 0.68;
constexpr double shortShare = 0.5;
constexpr double stripLines = 1.7; ///< heights, in lines of its words
constexpr double gapLines = 0.3;
constexpr double sheetLines = 4.5;
constexpr int sheetCells = 5;

QString inWords(const char* words)
{
    return QCoreApplication::translate("loadwarden", words);
}

/// A strip: where its front stands, and what that means.
struct Strip {
    double front = 0;
    QString says;
};

std::vector<Strip> stripsOf(TopicPicture picture)
{
    if (picture == TopicPicture::frontEntered) {
        return {{pastShare, inWords("the front, past the boundary: accept")}};
    }
    return {{boundaryShare, inWords("the front, on the boundary: reject")},
            {shortShare, inWords("the front, short of the boundary: reject")}};
}

class Drawing {
public:
    Drawing(QPainter& painter, const DrawnWith& with, QPointF at, double width)
        : m_painter(painter),
          m_with(with),
          m_at(at),
          m_width(width),
          m_line(QFontMetricsF(with.font).height()),
          m_pen(with.ink, m_line / 11, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin)
    {
        painter.setFont(with.font);
        painter.setBrush(Qt::NoBrush);
    }

    void front(TopicPicture picture)
    {
        const double boundary = m_at.x() + m_width * boundaryShare;
        words({m_at.x(), m_at.y(), m_width * boundaryShare - m_line / 2, m_line}, Qt::AlignRight,
              inWords("short of the boundary: reject"));
        words({boundary + m_line / 2, m_at.y(), m_width, m_line}, Qt::AlignLeft,
              inWords("accept zone"));
        double top = m_at.y() + (1 + gapLines) * m_line;
        for (const Strip& each : stripsOf(picture)) {
            strip(each, {m_at.x(), top, m_width, stripLines * m_line}, boundary);
            top += (stripLines + 1 + 3 * gapLines) * m_line;
        }
    }

    void colour()
    {
        const QString says[] = {inWords("unchanged: reject"), inWords("in part: reject"),
                                inWords("end colour: accept")};
        const double gap = m_line;
        const double wide = (m_width - 2 * gap) / 3;
        for (int i = 0; i < 3; ++i) {
            const QRectF patch(m_at.x() + i * (wide + gap), m_at.y() + gapLines * m_line, wide,
                               stripLines * m_line);
            field(patch);
            hatch(patch.adjusted(0, 0, -wide * (2 - i) / 2, 0));
            outline(patch);
            words({patch.left(), patch.bottom() + gapLines * m_line, wide, m_line}, Qt::AlignLeft,
                  says[i]);
        }
    }

    void sheet()
    {
        const QString says[] = {inWords("alike and complete all over: accept"),
                                inWords("a pale patch anywhere: reject")};
        for (int i = 0; i < 2; ++i) {
            const double left = m_at.x() + i * m_width / 2;
            const double top = m_at.y() + gapLines * m_line;
            grid({left, top, sheetLines * m_line, sheetLines * m_line}, i == 1);
            words({left, top + (sheetLines + gapLines) * m_line, m_width / 2, m_line},
                  Qt::AlignLeft, says[i]);
        }
    }

private:
    void strip(const Strip& of, const QRectF& in, double boundary)
    {
        const double front = in.left() + in.width() * of.front;
        const double inset = in.height() / 4;
        field(in);
        hatch(QRectF(in.left(), in.top() + inset, front - in.left(), in.height() - 2 * inset));
        outline(in);
        m_painter.setPen(m_pen);
        m_painter.drawLine(QPointF(front, in.top() + inset), QPointF(front, in.bottom() - inset));
        QPen line(m_with.boundary, m_line / 5);
        line.setCapStyle(Qt::FlatCap);
        m_painter.setPen(line);
        const double beyond = m_line / 5;
        m_painter.drawLine(QPointF(boundary, in.top() - beyond),
                           QPointF(boundary, in.bottom() + beyond));
        words({in.left(), in.bottom() + gapLines * m_line, in.width(), m_line}, Qt::AlignLeft,
              of.says);
    }

    void grid(const QRectF& in, bool hasPalePatch)
    {
        const double side = in.width() / sheetCells;
        const auto isInside = [](int at) { return at >= 1 && at <= sheetCells - 2; };
        field(in);
        for (int i = 0; i < sheetCells * sheetCells; ++i) {
            const QRectF cell(in.left() + i % sheetCells * side, in.top() + i / sheetCells * side,
                              side, side);
            if (!hasPalePatch || !isInside(i % sheetCells) || !isInside(i / sheetCells)) {
                hatch(cell);
            }
            outline(cell);
        }
    }

    void field(const QRectF& in) { m_painter.fillRect(in, m_with.field); }

    void outline(const QRectF& in)
    {
        m_painter.setPen(m_pen);
        m_painter.drawRect(in);
    }

    /// Lines of its own: a brush's pattern is as fine as the device, on a printer a grey.
    void hatch(const QRectF& in)
    {
        if (in.width() <= 0) {
            return;
        }
        m_painter.save();
        m_painter.setClipRect(in, Qt::IntersectClip);
        m_painter.setPen(QPen(m_with.ink, m_line / 20));
        for (double x = in.left() - in.height(); x < in.right(); x += m_line / 3) {
            m_painter.drawLine(QPointF(x, in.bottom()), QPointF(x + in.height(), in.top()));
        }
        m_painter.restore();
    }

    void words(const QRectF& in, int where, const QString& says)
    {
        m_painter.setPen(m_with.ink);
        m_painter.drawText(in, where | Qt::AlignVCenter | Qt::TextDontClip, says);
    }

    QPainter& m_painter;
    const DrawnWith& m_with;
    QPointF m_at;
    double m_width;
    double m_line;
    QPen m_pen;
};

} // namespace

void paintIndicator(QPainter& painter, TopicPicture picture, QPointF at, double width,
                    const DrawnWith& with)
{
    painter.save();
    Drawing drawing(painter, with, at, width);
    switch (picture) {
    case TopicPicture::none: break;
    case TopicPicture::frontEntered:
    case TopicPicture::frontOnBoundary: drawing.front(picture); break;
    case TopicPicture::colour: drawing.colour(); break;
    case TopicPicture::sheet: drawing.sheet(); break;
    }
    painter.restore();
}

double indicatorHeight(TopicPicture picture, const DrawnWith& with)
{
    const double line = QFontMetricsF(with.font).height();
    switch (picture) {
    case TopicPicture::none: return 0;
    case TopicPicture::frontEntered:
    case TopicPicture::frontOnBoundary: {
        const auto strips = static_cast<double>(stripsOf(picture).size());
        return line * (1 + gapLines + strips * (stripLines + 1 + 3 * gapLines));
    }
    case TopicPicture::colour: return line * (stripLines + 1 + 3 * gapLines);
    case TopicPicture::sheet: return line * (sheetLines + 1 + 3 * gapLines);
    }
    return 0;
}

QString indicatorSaid(TopicPicture picture)
{
    switch (picture) {
    case TopicPicture::none: return {};
    case TopicPicture::frontEntered:
        return inWords(
            "A strip with one boundary line; the front has gone past it into the accept zone "
            "without filling it.");
    case TopicPicture::frontOnBoundary:
        return inWords(
            "Two strips with one boundary line; the front of one stands on it, that of the "
            "other short of it. Neither is accepted.");
    case TopicPicture::colour:
        return inWords("A patch before and after the end colour is reached.");
    case TopicPicture::sheet:
        return inWords("A grid that has changed alike all over, and one with a pale centre.");
    }
    return {};
}

} // namespace loadwarden::paper
