#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// What is recorded of a test cycle beside its indicators: conditions of a Bowie-Dick test, the
/// reading of a leak test, whether a qualification's physical values were good.
class TestSection : public SheetSection {
    Q_OBJECT

public:
    explicit TestSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    [[nodiscard]] QWidget* makeConditions();
    [[nodiscard]] QWidget* makeLeak();
    [[nodiscard]] QWidget* makePhysical();
    [[nodiscard]] QWidget* makeVoid();
    void recordConditions();
    void recordLeak();
    void judge(bool good);
    void explain();
    /// What is recorded of it stands below the fields that ask for it.
    void showRecorded(const AnyAct& act);
    /// Empty is nullopt and right; what is no number is said at its field.
    [[nodiscard]] bool take(Field* field, QLineEdit* line, std::optional<TypedNumber>& into);

    Facts* m_facts;
    QWidget* m_conditions;
    ChoiceRow* m_empty;
    Field* m_emptyField;
    ChoiceRow* m_drying;
    Field* m_dryingField;
    QLineEdit* m_minutes;
    Field* m_minutesField;
    QLineEdit* m_celsius;
    Field* m_celsiusField;
    QWidget* m_leak;
    QLineEdit* m_settled;
    Field* m_settledField;
    QLineEdit* m_leakMinutes;
    Field* m_leakMinutesField;
    QLineEdit* m_rise;
    Field* m_riseField;
    QWidget* m_physical;
    QWidget* m_void;
    QLineEdit* m_why;
    Field* m_whyField;
};

} // namespace loadwarden::ui
