#pragma once

#include "ui/indicators/reading_guide.h"
#include "ui/load/sheet_section.h"

#include <vector>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class ReadingPanel;

/// Chemical and biological indicators of a cycle: where they are, and their answers.
class IndicatorSection : public SheetSection {
    Q_OBJECT

public:
    explicit IndicatorSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    void goTo(const QString& subject) override;

signals:
    void wantsBiologicals();

private:
    [[nodiscard]] QWidget* makePcdForm();
    [[nodiscard]] QWidget* makeSheetForm();
    void fillChoices(const Choices& choices, Method method);
    void addRow(const SheetIndicator& indicator, const LoadSheet& sheet);
    void openPanel(const std::string& id);
    /// How its product is read.
    [[nodiscard]] ReadingGuide guideOf(const SheetIndicator& indicator);
    void closePanel();
    void read(const std::string& id, Seen seen, const QString& words);
    void lose(const SheetIndicator& indicator);
    void placePcd();
    void placeSheet();

    QVBoxLayout* m_rows;
    QWidget* m_pcdForm;
    QLineEdit* m_mark;
    QComboBox* m_chemical;
    QComboBox* m_vial;
    Field* m_chemicalField;
    QWidget* m_sheetForm;
    QComboBox* m_sheetLot;
    struct ReadButton {
        std::string id;
        std::string holder;
        QPushButton* button;
    };

    std::size_t m_filled = 0; ///< how many lots the boxes were filled with
    Method m_filledFor{};     ///< and for which method
    std::vector<ReadButton> m_readButtons;
    std::string m_reading;          ///< the indicator whose panel is open; empty: none
    std::string m_focusAfter;       ///< the indicator that comes next once this one is recorded
    ReadingPanel* m_panel = nullptr;
};

} // namespace loadwarden::ui
