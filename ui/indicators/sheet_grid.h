#pragma once

#include "core/indicators/sheet_pattern.h"
#include "ui/look/look.h"

#include <QWidget>

namespace loadwarden::ui {

/// A sheet as a grid, on which is marked what is seen: a press or a stroke of the pointer marks
/// with what was taken up; arrow keys go from place to place, Space marks, 1 to 3 mark as changed
/// fully, in part and not.
class SheetGrid : public QWidget {
    Q_OBJECT

public:
    explicit SheetGrid(Look& look, QWidget* parent = nullptr);

    [[nodiscard]] const SheetCells& cells() const { return m_cells; }
    void setCells(const SheetCells& cells);
    void takeUp(CellMark mark) { m_mark = mark; }
    [[nodiscard]] QRect rectOf(std::size_t cell) const;
    /// "Row 2, column 3: not changed"
    [[nodiscard]] QString cursorText() const;

    [[nodiscard]] QSize sizeHint() const override;
    [[nodiscard]] QSize minimumSizeHint() const override { return sizeHint(); }

signals:
    void marked();
    void moved();

protected:
    void paintEvent(QPaintEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;

private:
    void markAt(const QPoint& at);
    void mark(CellMark mark);
    void go(int across, int down);
    void tellCursor();

    Look& m_look;
    SheetCells m_cells{};
    std::size_t m_cursor = 0;
    CellMark m_mark = CellMark::full;
};

/// "changed fully"
[[nodiscard]] QString textOf(CellMark mark);

} // namespace loadwarden::ui
