#pragma once

#include "core/acts/fold/facts.h"
#include "core/desk/cycle_record.h"
#include "ui/shell/area.h"

#include <QFrame>

#include <memory>
#include <optional>
#include <string>

class QLabel;
class QPushButton;
class QScrollArea;
class QVBoxLayout;

namespace loadwarden::ui {

class VerdictBadge;

/// The history of the load or test that is chosen, as the journal has it: what a correction took
/// away is struck through and stays.
class RecordPane : public QFrame {
    Q_OBJECT

public:
    explicit RecordPane(Workstation& workstation, QWidget* parent = nullptr);

    /// Nothing is chosen.
    void clear();
    /// A history is on its way.
    void wait(const QString& lot);
    void show(std::shared_ptr<const CycleRecord> record);

    /// Nullptr where none is shown.
    [[nodiscard]] const std::shared_ptr<const CycleRecord>& record() const { return m_record; }

signals:
    void wantsOpen();
    void wantsPaper();

private:
    void showState();
    void addFact(const Fact& fact);

    Workstation& m_workstation;
    QLabel* m_lot;
    VerdictBadge* m_badge;
    QLabel* m_state;
    QPushButton* m_open;
    QPushButton* m_paper;
    QFrame* m_rule;
    QScrollArea* m_scroll;
    QVBoxLayout* m_rows;
    std::shared_ptr<const CycleRecord> m_record;
};

} // namespace loadwarden::ui
