#pragma once

#include "core/desk/today.h"
#include "ui/shell/area.h"
#include "ui/shell/moment_timer.h"

#include <optional>
#include <vector>

class QLabel;
class QScrollArea;
class QVBoxLayout;

namespace loadwarden::ui {

class NeedRow;
class SterilizerRow;

/// What needs me now, the most urgent first, and below it each sterilizer with its day.
class TodayPage : public Page {
    Q_OBJECT

public:
    explicit TodayPage(Workstation& workstation);

    void shown() override;
    void lookAtClock() override { m_timer.look(); }

    /// Whether what stands here came from the journal and nothing newer was asked for.
    [[nodiscard]] bool isUpToDate() const { return m_today.has_value() && !m_isAsking; }

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void ask();
    void show(Today today);
    void showNeeds();
    void showSterilizers();
    void sizeStrip();
    void addGroup(const QString& heading, const QString& otherwise, bool isForNow);
    void act(const Need& need);
    [[nodiscard]] QString sterilizerName(const std::string& id) const;
    [[nodiscard]] QWidget* makeHead();
    [[nodiscard]] QWidget* makeStrip();
    [[nodiscard]] QWidget* makeLegend();

    Workstation m_workstation;
    MomentTimer m_timer;
    QLabel* m_day;
    QLabel* m_count;
    QLabel* m_asOf;
    QScrollArea* m_scroll;
    QVBoxLayout* m_rows;
    QScrollArea* m_strip;
    QVBoxLayout* m_sterilizers;
    QLabel* m_pointed;
    QWidget* m_legend;
    std::vector<NeedRow*> m_needRows;
    std::vector<SterilizerRow*> m_sterilizerRows;
    std::optional<Today> m_today;
    bool m_isAsking = false;
    bool m_asksAgain = false;
    bool m_showsAll = false;
};

} // namespace loadwarden::ui
