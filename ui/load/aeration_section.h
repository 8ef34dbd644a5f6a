#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;
class TimeEdit;

/// Aeration of what was in ethylene oxide: its runs, and what begins and ends one.
class AerationSection : public SheetSection {
    Q_OBJECT

public:
    explicit AerationSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    void start();
    /// Says something of the run that goes on, at the time that is typed.
    void say(AnyAct act, const QString& done);
    [[nodiscard]] std::optional<JournalTime> when();
    void refuseTime(const QString& why);

    Facts* m_facts;
    QWidget* m_startForm;
    QLineEdit* m_celsius;
    Field* m_field;
    QWidget* m_runningForm;
    TimeEdit* m_when;
    Field* m_whenField;
    bool m_isWhenTyped = false; ///< until then it is the moment
    std::string m_running;      ///< ar- of the first run that goes on; empty: none
};

} // namespace loadwarden::ui
