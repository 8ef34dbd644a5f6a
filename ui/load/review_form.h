#pragma once

#include "ui/load/sheet_section.h"

class QLineEdit;

namespace loadwarden::ui {

class Field;

/// An answer to a finding that waits for a lead or a supervisor.
class ReviewForm : public QFrame {
    Q_OBJECT

public:
    explicit ReviewForm(CycleDesk& desk, QWidget* parent = nullptr);

    /// Asks about a finding.
    void ask(const Finding& finding);

private:
    void sign();
    void lookAgain();
    void leave();

    CycleDesk& m_desk;
    Finding m_finding;
    QLabel* m_asks;
    ChoiceRow* m_answer;
    QLineEdit* m_why;
    Field* m_field;
};

} // namespace loadwarden::ui
