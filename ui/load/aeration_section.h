#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// Aeration of what was in ethylene oxide: its runs, and what begins and ends one.
class AerationSection : public SheetSection {
    Q_OBJECT

public:
    explicit AerationSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;

private:
    void start();

    Facts* m_facts;
    QWidget* m_startForm;
    QLineEdit* m_celsius;
    Field* m_field;
    QWidget* m_runningForm;
    std::string m_running; ///< ar- of the run that goes on; empty: none
};

} // namespace loadwarden::ui
