#include "ui/questions/topic_drawing.h"

#include "ui/paper/kit/indicator_drawing.h"

#include <QPainter>

#include <cmath>

namespace loadwarden::ui {
namespace {

constexpr int drawn = 520; ///< pixels across
constexpr int edge = 2;    ///< for the width of a line

paper::DrawnWith drawnWith(const Look& look)
{
    return {.font = look.font(Type::body),
            .ink = look.colours().ink,
            .field = look.colours().field,
            .boundary = look.colours().accent};
}

} // namespace

TopicDrawing::TopicDrawing(Look& look, TopicPicture picture, QWidget* parent)
    : QWidget(parent), m_look(look), m_picture(picture)
{
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(paper::indicatorSaid(picture));
}

QSize TopicDrawing::sizeHint() const
{
    const double height = paper::indicatorHeight(m_picture, drawnWith(m_look));
    return {drawn, static_cast<int>(std::ceil(height)) + 2 * edge};
}

void TopicDrawing::paintEvent(QPaintEvent* /*event*/)
{
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    paper::paintIndicator(painter, m_picture, {edge, edge}, drawn - 2.0 * edge, drawnWith(m_look));
}

} // namespace loadwarden::ui
