#include "ui/indicators/indicator_schematic.h"

#include "ui/indicators/schematic_paint.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct Measures {
    int width; ///< at least
    int strip; ///< its height
    int patch;
    int sheet;
};

constexpr Measures smallOnes{300, 32, 48, 126};
constexpr Measures largeOnes{440, 72, 120, 308};

const Measures& measuresOf(IndicatorSchematic::Size size)
{
    return size == IndicatorSchematic::Size::small ? smallOnes : largeOnes;
}

} // namespace

IndicatorSchematic::IndicatorSchematic(Look& look, Size size, QWidget* parent)
    : QWidget(parent), m_look(look), m_size(size)
{
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setAccessibleName(tr("The drawn indicator"));
    connect(&look, &Look::changed, this, [this] {
        updateGeometry();
        update();
    });
}

void IndicatorSchematic::show(const Drawn& drawn)
{
    m_drawn = drawn;
    updateGeometry();
    update();
}

int IndicatorSchematic::heightOf() const
{
    constexpr int ring = 4;
    const Measures& measures = measuresOf(m_size);
    switch (m_drawn ? m_drawn->response : Response::colour) {
    case Response::movingFront:
        return heightOfStrip(QFontMetrics(m_look.font(Type::body)), measures.strip);
    case Response::sheet: return measures.sheet + ring;
    case Response::colour:
    case Response::growth: break;
    }
    return measures.patch + ring;
}

QSize IndicatorSchematic::sizeHint() const
{
    return {measuresOf(m_size).width, heightOf()};
}

QSize IndicatorSchematic::minimumSizeHint() const
{
    return sizeHint();
}

void IndicatorSchematic::paintEvent(QPaintEvent* /*event*/)
{
    if (!m_drawn) {
        return;
    }
    const Measures& measures = measuresOf(m_size);
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setFont(m_look.font(Type::body));
    const Colours& colours = m_look.colours();
    constexpr double ring = 2;
    switch (m_drawn->response) {
    case Response::movingFront:
        paintStrip(painter, colours,
                   StripPlace(painter.fontMetrics(), width(), measures.strip, m_drawn->boundary),
                   m_drawn->front);
        break;
    case Response::sheet:
        paintSheet(painter, colours, QRectF(ring, ring, measures.sheet, measures.sheet),
                   cellsOf(m_drawn->pattern));
        break;
    case Response::colour:
    case Response::growth:
        paintPatch(painter, colours, QRectF(ring, ring, 2.5 * measures.patch, measures.patch),
                   m_drawn->changed);
        break;
    }
}

} // namespace loadwarden::ui
