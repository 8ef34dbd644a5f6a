#pragma once

#include "ui/shell/area.h"

#include <QWidget>

#include <vector>

class QLabel;
class QPushButton;
class QStackedWidget;

namespace loadwarden::ui {

/// The work areas of an open journal: the frame with their names and who works, and their pages. The
/// first page is there at once, so that somebody sees it; the others are made one after the other
/// a moment later, or when they are wanted.
class WorkView : public QWidget {
    Q_OBJECT

public:
    explicit WorkView(Workstation workstation, QWidget* parent = nullptr);

    /// The page that is to be seen is shown anew.
    void refresh();
    void lookAtClock();
    void showArea(int index);
    void showArea(const QString& id, const QString& thing = {});
    /// Something was scanned: true where the page that is to be seen takes it.
    [[nodiscard]] bool takeScan(const QString& text, const LookedUp& found);
    [[nodiscard]] int area() const;
    [[nodiscard]] int areaCount() const { return static_cast<int>(m_pages.size()); }
    /// Whether every page is made.
    [[nodiscard]] bool isWhole() const;
    /// Opens a cycle in the area that shows cycles; false: no area does.
    bool openCycle(const QString& cycle, const QString& item);

signals:
    void wantsChangeOfPerson();
    void says(const QString& what, const QString& next);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    [[nodiscard]] QWidget* makeBezel();
    [[nodiscard]] QWidget* makeFoot();
    [[nodiscard]] QPushButton* makeTab(int index);
    /// Makes it where it is not there yet.
    [[nodiscard]] Page& page(int index);
    void makeRest();
    void beginTest(const QString& sterilizer);
    void nameWho();

    Workstation m_workstation;
    QStackedWidget* m_stack;
    QLabel* m_facility;
    QPushButton* m_person;
    std::vector<QPushButton*> m_tabs;
    std::vector<Page*> m_pages; ///< null: not made yet
};

} // namespace loadwarden::ui
