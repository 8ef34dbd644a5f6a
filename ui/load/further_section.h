#pragma once

#include "ui/load/further_words.h"
#include "ui/load/sheet_section.h"

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace loadwarden::ui {

class Field;

/// What is seldom recorded of a cycle: one chooses what happened, and is asked what belongs to it.
class FurtherSection : public SheetSection {
    Q_OBJECT

public:
    explicit FurtherSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    /// Chooses it, where it can be recorded now.
    [[nodiscard]] bool choose(Further what, const QString& of);

private:
    void fillWhat();
    void fillOf();
    void fillHows();
    [[nodiscard]] const FurtherChoice* chosen() const;
    [[nodiscard]] std::optional<FurtherAnswer> answered();
    void record();
    void recordAs(const FurtherAnswer& answer, const std::string& otherCycle);
    /// What a signer is shown.
    [[nodiscard]] QStringList seen(const FurtherAnswer& answer) const;
    void clear();

    std::vector<FurtherChoice> m_choices;
    FurtherWords m_words;
    QComboBox* m_what;
    QLabel* m_hint;
    QWidget* m_form;
    QGridLayout* m_grid;
    QComboBox* m_of;
    QComboBox* m_how;
    QComboBox* m_detail;
    QLineEdit* m_number;
    QLineEdit* m_reason;
    Field* m_ofField = nullptr;
    Field* m_howField = nullptr;
    Field* m_detailField = nullptr;
    Field* m_numberField = nullptr;
    Field* m_reasonField = nullptr;
    QPushButton* m_record;
};

} // namespace loadwarden::ui
