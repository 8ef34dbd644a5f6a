#pragma once

#include "ui/paper/kit/type.h"

#include <QPointF>

#include <memory>

class QPainter;
class QTextLayout;

namespace loadwarden::paper {

/// Text wrapped to a width: at blanks, and inside a word only where the word alone is too long.
class WrappedText {
public:
    WrappedText(const Runs& runs, double width, Type type);

    [[nodiscard]] int lines() const;
    [[nodiscard]] double height() const { return lines() * lineHeight(m_type); }

    /// Paints some of its lines, the first of them with its upper left corner there.
    void paint(QPainter& painter, QPointF at, int first, int count) const;
    void paint(QPainter& painter, QPointF at) const { paint(painter, at, 0, lines()); }

private:
    std::shared_ptr<QTextLayout> m_layout; ///< shared by copies, not changed any more
    Type m_type;
};

} // namespace loadwarden::paper
