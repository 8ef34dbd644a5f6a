#pragma once

#include "core/desk/competence.h"
#include "core/desk/indicator_answer.h"
#include "ui/shell/area.h"

#include <optional>
#include <vector>

class QComboBox;
class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace loadwarden::ui {

/// "Is this indicator acceptable?": a lot is scanned or chosen, what is seen is placed or marked,
/// and the rules answer. And a check in which readers see how well they read.
class IndicatorDeskPage : public Page {
    Q_OBJECT

public:
    explicit IndicatorDeskPage(Workstation& workstation);

    void shown() override;
    bool takeScan(const QString& text, const LookedUp& found) override;

    [[nodiscard]] bool isUpToDate() const { return m_isRead && !m_isAsking; }

private:
    struct Known {
        std::vector<ReadableLot> lots;
        Policy policy;
        Date today;
        std::vector<CheckTaken> checks;
        std::optional<ReadersAgree> agreement;
    };

    [[nodiscard]] QWidget* makeHead();
    void refresh();
    void take(Known known);
    /// Shows what is read of a lot; the keyboard stays where it is.
    void choose(const std::string& lot);
    void showLot(const ReadableLot& lot);
    void focusReading();
    void showAnswer(const ReadableLot& lot, Seen seen);
    void showStart();
    void beginCheck();
    void record(const CheckResult& result);
    void addNarrow(QWidget* widget);

    Workstation m_workstation;
    QComboBox* m_lots;
    QComboBox* m_place;
    QScrollArea* m_scroll;
    QVBoxLayout* m_column;
    Known m_known;
    std::string m_lot; ///< pl-, of which is read; empty: none
    bool m_isRead = false;
    bool m_isAsking = false;
    bool m_isChecking = false; ///< somebody takes a check: it is not taken from them
};

} // namespace loadwarden::ui
