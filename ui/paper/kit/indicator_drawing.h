#pragma once

#include "core/guidance/topic.h"

#include <QColor>
#include <QFont>
#include <QString>

class QPainter;
class QPointF;

namespace loadwarden::paper {

/// What an indicator is drawn with: on paper black on white, in the window its own colours.
struct DrawnWith {
    QFont font;
    QColor ink = Qt::black;
    QColor field = Qt::white;    ///< of the strip, patch or sheet itself
    QColor boundary = Qt::black; ///< of the line that a front has to pass
};

/// How a kind of indicator answers, as a plain strip or a plain grid in the program's own style,
/// with words outside it and hatching in the place of colours: no maker's card. Of `none` nothing.
void paintIndicator(QPainter& painter, TopicPicture picture, QPointF at, double width,
                    const DrawnWith& with);

/// How high that is.
[[nodiscard]] double indicatorHeight(TopicPicture picture, const DrawnWith& with);

/// The same in words, for who does not see it.
[[nodiscard]] QString indicatorSaid(TopicPicture picture);

} // namespace loadwarden::paper
