#pragma once

#include "ui/shell/area.h"
#include "ui/shell/moment_timer.h"

#include <QTimer>

#include <map>
#include <optional>
#include <vector>

class QLabel;
class QScrollArea;
class QStackedWidget;

namespace loadwarden::ui {

class CycleList;
class LoadView;
class NewLoadForm;
class RecordPaper;

/// Loads and tests: those at hand in a list, and the one that is chosen.
class LoadPage : public Page {
    Q_OBJECT

public:
    explicit LoadPage(Workstation& workstation);

    void shown() override;
    void lookAtClock() override { m_timer.look(); }
    bool takeScan(const QString& text, const LookedUp& found) override;

    /// Shows a cycle, and in it what LoadView::goTo() knows; `thing` may be empty.
    void open(const QString& cycle, const QString& thing);

    /// Asks for a test of a sterilizer that it needs now.
    void beginTest(const QString& sterilizer);

    /// Whether what stands here came from the journal and nothing newer was asked for.
    [[nodiscard]] bool isUpToDate() const;
    [[nodiscard]] LoadView* view() const { return m_view; }

private:
    void ask();
    void renew();
    void wantNew(const QString& sterilizer = {}, const QString& specification = {},
                 const QString& note = {});
    void see(LoadView* view);
    [[nodiscard]] LoadView* viewOf(const QString& cycle);
    [[nodiscard]] LoadView* makeView();
    void makeSpare();
    /// The day on which somebody works, by which fields for times are filled.
    [[nodiscard]] std::optional<Date> day() const;
    [[nodiscard]] QWidget* makeSide();
    [[nodiscard]] QWidget* makeEmpty();

    Workstation m_workstation;
    MomentTimer m_timer;
    CycleList* m_list;
    RecordPaper* m_paper;
    QStackedWidget* m_stack;
    QWidget* m_empty;
    NewLoadForm* m_new;
    QScrollArea* m_newScroll;
    QLabel* m_reading; ///< until a load is read
    LoadView* m_view = nullptr;
    LoadView* m_spare = nullptr;     ///< for the next one that is opened, so that it is there at once
    std::optional<Date> m_spareDay; ///< on which it was made
    QTimer m_rest;                   ///< until what is seen is painted
    /// Closes views that nobody has looked at for long.
    void letGo();

    std::map<QString, LoadView*> m_views; ///< those that are open: what is typed there stays
    std::vector<QString> m_order;         ///< of those, the one shown last at the end
    bool m_isAsking = false;
    bool m_asksAgain = false;
    bool m_hasList = false;
    bool m_showsNew = false; ///< the form for a new load stands before the load
};

} // namespace loadwarden::ui
