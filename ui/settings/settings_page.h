#pragma once

#include "ui/settings/section.h"

#include <vector>

class QPushButton;
class QStackedWidget;
class QVBoxLayout;

namespace loadwarden::ui {

/// What a supervisor looks after, by sections, and what this workstation is set to.
class SettingsPage : public Page {
    Q_OBJECT

public:
    explicit SettingsPage(Workstation& workstation);

    void shown() override;
    /// A section by its id.
    void goTo(const QString& section) override;

    [[nodiscard]] int sectionCount() const { return static_cast<int>(m_tabs.size()); }
    /// Never translated: "products".
    [[nodiscard]] const char* sectionId(int index) const;
    void showSection(int index);
    [[nodiscard]] int section() const;
    /// What is seen is what the journal holds.
    [[nodiscard]] bool isUpToDate() const { return m_registers != nullptr && !m_isAsking; }

protected:
    /// Arrows go from one section to the next.
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void addSection(const char* id, const QString& name, QWidget* widget);
    void add(const char* id, const QString& name, Section* section);
    void ask();
    void show(Registers registers);

    Workstation m_workstation;
    QVBoxLayout* m_list;
    QStackedWidget* m_stack;
    std::vector<QPushButton*> m_tabs;
    std::vector<const char*> m_ids;
    std::vector<QWidget*> m_widgets;
    std::vector<Section*> m_sections;
    RegistersNow m_registers;
    bool m_isAsking = false;
    bool m_asksAgain = false;
};

} // namespace loadwarden::ui
