#include "ui/indicators/sheet_grid.h"

#include "ui/indicators/schematic_paint.h"

#include <QAccessible>
#include <QCoreApplication>
#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr int cellSide = space::target;
constexpr int ring = 3; ///< around it, for the keyboard's

struct GridWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::GridWords)
};

} // namespace

QString textOf(CellMark mark)
{
    switch (mark) {
    case CellMark::unmarked: return GridWords::tr("not marked yet");
    case CellMark::full: return GridWords::tr("changed fully");
    case CellMark::part: return GridWords::tr("changed in part");
    case CellMark::none: return GridWords::tr("not changed");
    }
    return {};
}

SheetGrid::SheetGrid(Look& look, QWidget* parent) : QWidget(parent), m_look(look)
{
    setFocusPolicy(Qt::StrongFocus);
    setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    setAccessibleName(tr("The sheet, %1 places across and down").arg(sheetSide));
    connect(&look, &Look::changed, this, qOverload<>(&QWidget::update));
    tellCursor();
}

void SheetGrid::setCells(const SheetCells& cells)
{
    m_cells = cells;
    tellCursor();
    update();
    emit marked();
}

QSize SheetGrid::sizeHint() const
{
    constexpr int side = sheetSide * cellSide + 2 * ring;
    return {side, side};
}

QRect SheetGrid::rectOf(std::size_t cell) const
{
    const int column = static_cast<int>(cell) % sheetSide;
    const int row = static_cast<int>(cell) / sheetSide;
    return {ring + column * cellSide, ring + row * cellSide, cellSide, cellSide};
}

QString SheetGrid::cursorText() const
{
    const int column = static_cast<int>(m_cursor) % sheetSide;
    const int row = static_cast<int>(m_cursor) / sheetSide;
    return tr("Row %1, column %2: %3")
        .arg(QString::number(row + 1), QString::number(column + 1), textOf(m_cells[m_cursor]));
}

void SheetGrid::paintEvent(QPaintEvent* /*event*/)
{
    const Colours& colours = m_look.colours();
    QPainter painter(this);
    paintSheet(painter, colours, QRectF(ring, ring, sheetSide * cellSide, sheetSide * cellSide),
               m_cells);
    if (hasFocus()) {
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colours.focus, ring));
        painter.drawRect(QRectF(rectOf(m_cursor)));
    }
}

void SheetGrid::keyPressEvent(QKeyEvent* event)
{
    switch (event->key()) {
    case Qt::Key_Left: go(-1, 0); return;
    case Qt::Key_Right: go(1, 0); return;
    case Qt::Key_Up: go(0, -1); return;
    case Qt::Key_Down: go(0, 1); return;
    case Qt::Key_Home: go(-sheetSide, 0); return;
    case Qt::Key_End: go(sheetSide, 0); return;
    case Qt::Key_Space: mark(m_mark); return;
    case Qt::Key_1: mark(CellMark::full); return;
    case Qt::Key_2: mark(CellMark::part); return;
    case Qt::Key_3: mark(CellMark::none); return;
    default: event->ignore(); // what stands around it has keys of its own
    }
}

void SheetGrid::mousePressEvent(QMouseEvent* event)
{
    if (event->button() == Qt::LeftButton) {
        markAt(event->position().toPoint());
    }
}

void SheetGrid::mouseMoveEvent(QMouseEvent* event)
{
    if (event->buttons().testFlag(Qt::LeftButton)) {
        markAt(event->position().toPoint());
    }
}

void SheetGrid::markAt(const QPoint& at)
{
    for (std::size_t cell = 0; cell < m_cells.size(); ++cell) {
        if (rectOf(cell).contains(at)) {
            m_cursor = cell;
            mark(m_mark);
            return;
        }
    }
}

void SheetGrid::mark(CellMark mark)
{
    m_cells[m_cursor] = mark;
    tellCursor();
    update();
    emit marked();
}

void SheetGrid::go(int across, int down)
{
    const int column =
        std::clamp(static_cast<int>(m_cursor) % sheetSide + across, 0, sheetSide - 1);
    const int row = std::clamp(static_cast<int>(m_cursor) / sheetSide + down, 0, sheetSide - 1);
    m_cursor = static_cast<std::size_t>(row) * sheetSide + static_cast<std::size_t>(column);
    tellCursor();
    update();
}

void SheetGrid::tellCursor()
{
    setAccessibleDescription(cursorText());
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
    emit moved();
}

} // namespace loadwarden::ui
