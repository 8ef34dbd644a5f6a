#pragma once

#include "core/desk/biologicals.h"
#include "ui/biologicals/bi_row.h"
#include "ui/biologicals/chime.h"
#include "ui/shell/area.h"
#include "ui/shell/moment_timer.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace loadwarden::ui {

/// Biological indicators by the control that vouches for them, what is due first; positives above
/// everything.
class BiologicalsPage : public Page {
    Q_OBJECT

public:
    explicit BiologicalsPage(Workstation& workstation);

    void shown() override { ask(); }
    void lookAtClock() override { m_timer.look(); }
    /// The row of a vial or a control.
    void goTo(const QString& test) override;

    /// Whether what stands here came from the journal and nothing newer was asked for.
    [[nodiscard]] bool isUpToDate() const { return m_made.has_value() && !m_isAsking; }
    [[nodiscard]] Chime& chime() { return m_chime; }

private:
    void ask();
    void show(Biologicals made);
    void showNow();
    void addGroup(const BiGroup& group);
    void addRow(const BiGroup& group, const BiTest& test, const QString& name);
    void tellTime();
    void ringForDue();
    void sayOfFocused(BiSaying saying);
    void said(const BiTest& test, const QString& name, BiSaying saying, const QString& incubator);
    void read(const BiTest& test, const QString& name, Seen seen);
    void record(AnyAct act, std::vector<std::string> subjects, const QString& done);
    void prepareControl(const BiGroup& group);
    void refused(const Refusal& refusal);
    void keepPlace(int row);
    void seeQuestion(BiRow* row);
    [[nodiscard]] bool isSomebodySaying() const;
    [[nodiscard]] QWidget* makeHead();

    Workstation m_workstation;
    MomentTimer m_timer;
    Chime m_chime;
    QLabel* m_count;
    QLabel* m_asOf;
    QScrollArea* m_scroll;
    QVBoxLayout* m_column;
    std::vector<BiRow*> m_rows;
    std::optional<Biologicals> m_made;
    std::set<std::string> m_rung; ///< what the sound was made for
    bool m_isAsking = false;
    bool m_asksAgain = false;
    bool m_showsLater = false; ///< somebody is in the middle of saying something
    QString m_goTo;            ///< the vial or control to go to once shown anew; empty: none
    int m_focusRow = -1;       ///< where the keyboard goes once shown anew; -1: nowhere
};

} // namespace loadwarden::ui
