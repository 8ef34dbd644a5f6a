#include "ui/indicators/front_strip.h"

#include "core/indicators/front.h"
#include "ui/indicators/schematic_paint.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QWheelEvent>

namespace loadwarden::ui {
namespace {

constexpr int usualWidth = 420;
constexpr int leastWidth = 320;
constexpr int stripHeight = 56;
constexpr int step = 5; ///< thousandths, by an arrow key
constexpr int fineStep = 1;
constexpr int pageStepOf = 50;
constexpr double gripRadius = 7;

bool moves(int key)
{
    switch (key) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
    case Qt::Key_PageUp:
    case Qt::Key_PageDown:
    case Qt::Key_Home:
    case Qt::Key_End: return true;
    default: return false;
    }
}

} // namespace

FrontStrip::FrontStrip(Look& look, int boundary, QWidget* parent)
    : QAbstractSlider(parent), m_look(look), m_boundary(boundary)
{
    setOrientation(Qt::Horizontal);
    setRange(0, wholeStrip);
    setSingleStep(step);
    setPageStep(pageStepOf);
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
    setAccessibleName(tr("Where the front ends, in thousandths of the strip"));
    setAccessibleDescription(tr("Not placed yet. The boundary is at %1.").arg(m_boundary));
    m_isPlaced = false; // what was set up is no placing
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

std::optional<int> FrontStrip::front() const
{
    return m_isPlaced ? std::optional(value()) : std::nullopt;
}

void FrontStrip::clear()
{
    setValue(0);
    m_isPlaced = false;
    update();
    emit placed();
}

QSize FrontStrip::sizeHint() const
{
    return {usualWidth, heightOfStrip(QFontMetrics(m_look.font(Type::body)), stripHeight)};
}

QSize FrontStrip::minimumSizeHint() const
{
    return {leastWidth, sizeHint().height()};
}

void FrontStrip::paintEvent(QPaintEvent* /*event*/)
{
    const Colours& colours = m_look.colours();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(m_look.font(Type::body));
    const StripPlace place(painter.fontMetrics(), width(), stripHeight, m_boundary);
    paintStrip(painter, colours, place, front());
    // Below what is judged: it must not hide where the front ends.
    const QPointF grip(place.xOf(value()), place.strip.bottom());
    painter.setBrush(m_isPlaced ? colours.accent : colours.field);
    painter.setPen(QPen(hasFocus() ? colours.focus : colours.accent, 3));
    painter.drawEllipse(grip, gripRadius, gripRadius);
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colours.focus, 2));
        painter.drawRect(place.strip.adjusted(-3, -3, 3, 3));
    }
}

void FrontStrip::keyPressEvent(QKeyEvent* event)
{
    if (!moves(event->key())) {
        event->ignore(); // what stands around it has keys of its own
        return;
    }
    setSingleStep(event->modifiers().testFlag(Qt::ShiftModifier) ? fineStep : step);
    QAbstractSlider::keyPressEvent(event);
    setPlaced();
}

void FrontStrip::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        placeAt(event->position().x());
    }
}

void FrontStrip::mouseMoveEvent(QMouseEvent* event)
{
    if (event->buttons().testFlag(Qt::LeftButton)) {
        placeAt(event->position().x());
    }
}

void FrontStrip::wheelEvent(QWheelEvent* event)
{
    event->ignore(); // it scrolls the page: nothing is placed in passing
}

void FrontStrip::sliderChange(SliderChange change)
{
    QAbstractSlider::sliderChange(change);
    if (change == SliderValueChange) {
        setPlaced();
    }
}

void FrontStrip::placeAt(double x)
{
    setValue(StripPlace(QFontMetrics(m_look.font(Type::body)), width(), stripHeight, m_boundary)
                 .thousandthsAt(x));
    setPlaced();
}

void FrontStrip::setPlaced()
{
    m_isPlaced = true;
    update();
    emit placed();
}

} // namespace loadwarden::ui
