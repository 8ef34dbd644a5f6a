#pragma once

#include "ui/load/cycle_desk.h"

#include <QFrame>

class QBoxLayout;
class QLabel;
class QPushButton;

namespace loadwarden::ui {

class VerdictBadge;

/// The answer, at the top of a cycle's page: what is decided, of which load, where it stands, and
/// what can be signed about it.
class VerdictBand : public QFrame {
    Q_OBJECT

public:
    explicit VerdictBand(CycleDesk& desk, QWidget* parent = nullptr);

    void show(const LoadSheet& sheet);
    /// The keyboard goes to what is to be signed.
    void focusMain();

    /// Whether a verdict says something yet, or the cycle has still to end.
    [[nodiscard]] static bool isDecidable(const LoadSheet& sheet);

signals:
    void wantsEmergency();
    /// The items are to be processed anew in a load of their own.
    void wantsNewLoad();
    void wantsPaper();

private:
    void signAs(Verdict meaning);
    void verifyAndRelease();
    /// What a signer of a decision is shown to have seen.
    [[nodiscard]] QStringList seen(const Decision& decision) const;
    void showActions(const LoadSheet& sheet);
    /// What came in after the newest signature; empty: nothing that is decided no worse.
    [[nodiscard]] QString saidSince(const LoadSheet& sheet) const;

    CycleDesk& m_desk;
    VerdictBadge* m_badge;
    QLabel* m_lot;
    QLabel* m_phase;
    QLabel* m_behind;
    QLabel* m_since;
    QLabel* m_working;
    QPushButton* m_main;
    QPushButton* m_hold;
    QPushButton* m_reprocess;
    QPushButton* m_emergency;
    QPushButton* m_again;
    QPushButton* m_paper;
    bool m_mainVerifies = false;
};

} // namespace loadwarden::ui
