#pragma once

#include "ui/load/sheet_section.h"

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class TimeEdit;

/// Sterilizer and program, start and end of a cycle.
class CycleSection : public SheetSection {
    Q_OBJECT

public:
    explicit CycleSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    [[nodiscard]] QWidget* makeStart();
    [[nodiscard]] QWidget* makeEnd();
    [[nodiscard]] QWidget* makeAlarm();
    void start();
    void end();
    void recordAlarm();
    void takeNow();
    void showFacts(const LoadSheet& sheet);
    /// False, with words at its field, where it is no number.
    [[nodiscard]] bool takeCounter(Field* field, std::optional<std::int64_t>& counter);

    Facts* m_facts;
    QWidget* m_startForm;
    TimeEdit* m_startTime;
    ChoiceRow* m_clock;
    QLineEdit* m_startCounter;
    Field* m_startField;
    Field* m_startCounterField;
    QWidget* m_endForm;
    TimeEdit* m_endTime;
    ChoiceRow* m_outcome;
    QComboBox* m_phase;
    Field* m_endField;
    Field* m_phaseField;
    QPushButton* m_alarmOpen;
    QWidget* m_alarmForm;
    QLineEdit* m_alarm;
    Field* m_alarmField;
    bool m_isStartTyped = false; ///< until then the time is that of the moment
    bool m_isEndTyped = false;
};

} // namespace loadwarden::ui
