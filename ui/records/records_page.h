#pragma once

#include "core/desk/records.h"
#include "ui/records/records_model.h"
#include "ui/shell/area.h"

#include <optional>
#include <string>

class QLabel;
class QPushButton;
class QStackedWidget;
class QTableView;
class QTimer;

namespace loadwarden::ui {

class JournalWork;
class RecordPane;
class RecordPaper;
class RecordsFilter;

/// Every load and test of the journal: found, read again with its corrections, opened and put on
/// paper; and the journal as a whole, verified and copied out.
class RecordsPage : public Page {
    Q_OBJECT

public:
    explicit RecordsPage(Workstation& workstation);

    void shown() override;

    /// Whether what stands here came from the journal and nothing newer was asked for.
    [[nodiscard]] bool isUpToDate() const;
    [[nodiscard]] const RecordsModel& model() const { return *m_model; }

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    [[nodiscard]] QWidget* makeHead();
    [[nodiscard]] QWidget* makeTable();
    [[nodiscard]] QWidget* makeEmpty();
    void sizeColumns();
    void offer();
    void find();
    void search(RecordQuestion question);
    void ask(const CyclePlace& behind, RecordsModel::Done done);
    void tellState();
    void tellView();
    void chooseAgain();
    void chose();
    void askHistory();
    void open();
    [[nodiscard]] const RecordRow* chosen() const;
    [[nodiscard]] QString nameOf(const std::string& id) const;

    Workstation m_workstation;
    RecordsModel* m_model;
    RecordsFilter* m_filter;
    QLabel* m_state;
    QPushButton* m_goOn;
    QPushButton* m_clear;
    QPushButton* m_verify;
    QPushButton* m_export;
    JournalWork* m_work;
    RecordPaper* m_paper;
    QTableView* m_table;
    QStackedWidget* m_stack;
    QLabel* m_emptyHead;
    QLabel* m_emptySays;
    RecordPane* m_pane;
    QTimer* m_settle; ///< until the chosen row stays for a moment
    RecordQuestion m_question;
    RecordChoices m_choices;
    std::string m_chosen;    ///< ld-; empty: none
    std::string m_wasChosen; ///< before it was searched anew
    bool m_isOffered = false;
    bool m_isAsking = false;
    bool m_isResolving = false;
    bool m_isReading = false;
};

} // namespace loadwarden::ui
