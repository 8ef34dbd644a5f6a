#include "ui/paper/kit/frame.h"

#include "core/words/say.h"
#include "ui/paper/kit/wrapped_text.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>

namespace loadwarden::paper {
namespace {

constexpr double sideShare = 0.34; ///< of the width, for facility and page

QString pageText(int page, int pages)
{
    return QCoreApplication::translate("loadwarden", "Page %1 of %2").arg(page).arg(pages);
}

/// What a head consists of, laid out.
struct Head {
    WrappedText title;
    WrappedText subject;
    WrappedText side;
    double mainWidth;

    Head(const Frame& frame, double width, int page, int pages)
        : title(plain(frame.title), width * (1 - sideShare), Type::section),
          subject(strong(frame.subject), width * (1 - sideShare) - points(24), Type::title),
          side({{frame.facility.isEmpty() ? QString() : frame.facility + u'\n', Face::strong},
                {frame.made + u'\n', Face::plain},
                {pageText(page, pages), Face::strong}},
               width * sideShare, Type::body),
          mainWidth(width * (1 - sideShare))
    {
    }

    [[nodiscard]] double height() const
    {
        return std::max(title.height() + subject.height(), side.height()) + points(12);
    }
};

WrappedText footOf(const Frame& frame, double width)
{
    Runs runs;
    if (!frame.journal.isEmpty()) {
        runs = plain(frame.journal + u'\n');
    }
    runs.push_back({text(caution()), Face::strong});
    return {runs, width, Type::body};
}

} // namespace

double headHeight(const Frame& frame, double width)
{
    return Head(frame, width, 99, 99).height() + points(6);
}

double footHeight(const Frame& frame, double width)
{
    return footOf(frame, width).height() + points(9);
}

void paintHead(QPainter& painter, const Frame& frame, QPointF at, double width, int page, int pages)
{
    const Head head(frame, width, page, pages);
    painter.fillRect(QRectF(at, QSizeF(points(4), head.height() - points(6))), Qt::black);
    const QPointF main = at + QPointF(points(11), 0);
    head.title.paint(painter, main);
    head.subject.paint(painter, main + QPointF(0, head.title.height()));
    head.side.paint(painter, at + QPointF(head.mainWidth, 0));
    const double below = at.y() + head.height();
    painter.setPen(QPen(Qt::black, points(1.2)));
    painter.drawLine(QPointF(at.x(), below), QPointF(at.x() + width, below));
}

void paintFoot(QPainter& painter, const Frame& frame, QPointF at, double width)
{
    painter.setPen(QPen(Qt::black, points(0.6)));
    const double y = at.y() + points(3);
    painter.drawLine(QPointF(at.x(), y), QPointF(at.x() + width, y));
    footOf(frame, width).paint(painter, at + QPointF(0, points(7)));
}

} // namespace loadwarden::paper
