#pragma once

#include "ui/load/cycle_desk.h"

#include <QWidget>

#include <map>

class QScrollArea;

namespace loadwarden::ui {

class ContentsSection;
class EmergencyForm;
class LaterStrip;
class PackageSection;
class ReasonsList;
class ReviewForm;
class SheetSection;
class TraceSection;
class VerdictBand;

/// One cycle: its verdict at the top, the reasons beside its record, each leading to the field that
/// settles it. It lives as long as the page, so that what is half-typed in it stays.
class LoadView : public QWidget {
    Q_OBJECT

public:
    /// Of no cycle yet: making it takes longer than reading and showing one.
    explicit LoadView(Workstation& workstation, QWidget* parent = nullptr);

    /// Which cycle it shows: said once, before it is seen.
    void begin(const QString& cycle) { m_desk->begin(cycle.toStdString()); }

    // As a page: there are as many as are kept open.
    [[nodiscard]] bool hasHeightForWidth() const override { return false; }
    [[nodiscard]] int heightForWidth(int /*width*/) const override { return -1; }

    [[nodiscard]] CycleDesk& desk() { return *m_desk; }
    void refresh() { m_desk->refresh(); }
    /// Goes, once it is shown, to an item or an indicator by its id, to what settles a finding by
    /// its key, or to what is signed ("sign").
    void goTo(const QString& thing);
    /// Whether something stands in its fields that was typed and not recorded.
    [[nodiscard]] bool isHalfTyped() const;
    /// A scan on its page.
    [[nodiscard]] bool takeScan(const QString& text, const LookedUp& found);

signals:
    void says(const QString& what, const QString& next);
    void wantsBiologicals();
    void wantsPaper();
    /// A reason lies in another cycle.
    void wantsCycle(const QString& cycle);
    void wantsNewLoad(const QString& sterilizer, const QString& specification, const QString& note);

protected:
    /// A recorder's file may be dropped anywhere on it.
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    [[nodiscard]] QWidget* makeReasons();
    [[nodiscard]] QWidget* makeRecord();
    void show();
    void settle(int index);
    void wantNewLoad();
    void showReasons(const LoadSheet& sheet);
    /// Whether that is the key of one of the reasons, to which it goes then.
    [[nodiscard]] bool goToFinding(const QString& key);
    [[nodiscard]] QString itemName(const Finding& finding) const;
    template <class Made>
    Made* add(QLayout* column);

    CycleDesk* m_desk;
    VerdictBand* m_band;
    LaterStrip* m_later;
    ReasonsList* m_reasons;
    QLabel* m_reasonsHead;
    QLabel* m_reasonsNote; ///< what is not asked for yet
    ReviewForm* m_review;
    EmergencyForm* m_emergency;
    QScrollArea* m_scroll;
    QScrollArea* m_reasonsScroll = nullptr;
    ContentsSection* m_contents = nullptr;
    PackageSection* m_packages = nullptr;
    TraceSection* m_trace = nullptr;
    std::vector<SheetSection*> m_sections;
    std::vector<Finding> m_findings; ///< as they are shown
    QString m_goTo;                  ///< once it is shown
};

} // namespace loadwarden::ui
