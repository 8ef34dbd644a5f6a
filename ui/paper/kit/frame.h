#pragma once

#include "ui/paper/kit/page_size.h"
#include "ui/paper/kit/type.h"

#include <QPointF>
#include <QString>

class QPainter;

namespace loadwarden::paper {

/// What stands on every page of a sheet.
struct Frame {
    QString title;   ///< what sheet it is
    QString subject; ///< of what: a lot control number, a sterilizer, a shift
    QString facility;
    QString made;    ///< as of when it was printed, in words
    QString journal; ///< its id and newest entry, or what else it rests on, in words; may be empty
};

/// Heights of what stands above and below a sheet's blocks.
[[nodiscard]] double headHeight(const Frame& frame, double width);
[[nodiscard]] double footHeight(const Frame& frame, double width);

void paintHead(QPainter& painter, const Frame& frame, QPointF at, double width, int page,
               int pages);
/// The journal, and the caution.
void paintFoot(QPainter& painter, const Frame& frame, QPointF at, double width);

} // namespace loadwarden::paper
