#pragma once

#include "core/indicators/sheet_pattern.h"
#include "ui/indicators/indicator_reader.h"

class QButtonGroup;
class QPushButton;
class QVBoxLayout;

namespace loadwarden::ui {

class SheetGrid;

/// A test sheet: what is seen is marked on a grid, or named as a pattern, or both. Where both are
/// there and the grid shows a place that has not fully changed, the sheet is never complete.
class SheetReader : public IndicatorReader {
    Q_OBJECT

public:
    SheetReader(Look& look, AnswersBy answersBy, QWidget* parent = nullptr);

    [[nodiscard]] std::optional<SheetPattern> pattern() const;
    [[nodiscard]] std::optional<Seen> seen() const override;
    void clear() override;

    [[nodiscard]] SheetGrid* grid() const { return m_grid; }

private:
    [[nodiscard]] QVBoxLayout* makeGridSide();
    [[nodiscard]] QVBoxLayout* makePatternSide(Look& look, AnswersBy answersBy);
    void paintIcons();
    void name(std::optional<SheetPattern> pattern);
    void takeMarks();
    void takeName();
    /// A sheet with a pale place is not complete, whatever is named; whether that had to be said.
    bool refuseComplete();
    void showPattern();

    Look& m_look;
    SheetGrid* m_grid;
    QLabel* m_cursor;
    QButtonGroup* m_marks;
    QButtonGroup* m_patterns;
    bool m_isNamedByMarks = false;
    SeenLine* m_says = nullptr;
    QLabel* m_suggests = nullptr;
};

} // namespace loadwarden::ui
