#pragma once

#include "ui/load/sheet_section.h"

#include <vector>

class QComboBox;
class QLineEdit;

namespace loadwarden::ui {

class Field;
class QuantityEdit;
class TimeEdit;

/// The sterilizer's own record: what is printed, its readings beside their limits, and that
/// somebody has looked at it.
class PrintoutSection : public SheetSection {
    Q_OBJECT

public:
    explicit PrintoutSection(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet) override;
    void goTo(const QString& subject) override;

private:
    /// A parameter with the line into which its reading is typed.
    struct Line {
        Parameter parameter;
        QuantityEdit* edit;
        Field* field;
    };

    [[nodiscard]] QWidget* makePrintout();
    void makeLines(const LoadSheet& sheet);
    void showFacts(const LoadSheet& sheet);
    /// Limits below each field, and what is recorded already.
    void showHints(const LoadSheet& sheet);
    void showAnswers(const LoadSheet& sheet);
    [[nodiscard]] Unit unitOf(const SheetParameter& parameter);
    void record();
    /// Words about a reading beyond its limits, which is asked about once.
    [[nodiscard]] QString beyondLimits(const Line& line) const;
    void verify();
    /// What the printout shows of its cycle, in one line; empty: nothing is recorded of it.
    [[nodiscard]] QString printedText(const LoadSheet& sheet);
    void answer(PrintoutAnswer answer, std::optional<PrintoutField> field);

    Facts* m_facts;
    QWidget* m_form;
    QLineEdit* m_sterilizer;
    QLineEdit* m_program;
    QLineEdit* m_counter;
    Field* m_counterField;
    TimeEdit* m_start;
    Field* m_startField;
    TimeEdit* m_end;
    Field* m_endField;
    QWidget* m_printed;
    QGridLayout* m_grid;
    std::vector<Line> m_lines;
    QPushButton* m_record;
    QLabel* m_error;
    QPushButton* m_verify;
    QPushButton* m_again; ///< brings the lines back once everything is read
    bool m_isAgain = false;
    bool m_isVerifyNext = false; ///< once what was recorded is shown
    QVBoxLayout* m_answers;
    QString m_askedAbout; ///< readings beyond their limits that somebody was asked about
};

} // namespace loadwarden::ui
