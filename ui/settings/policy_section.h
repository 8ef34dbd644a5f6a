#pragma once

#include "ui/settings/section.h"

#include <vector>

class QComboBox;
class QPushButton;
class QStackedWidget;

namespace loadwarden::ui {

class Field;
class FileEdit;
class PolicyForm;
class PolicyTable;

/// What decides about loads: to be read, compared between revisions, and revised.
class PolicySection : public Section {
    Q_OBJECT

public:
    explicit PolicySection(const Workstation& workstation);

    void show(const RegistersNow& registers) override;
    void lookAtRights() override;

private:
    QWidget* makeReading();
    QWidget* makeComparing();
    void addView(const QString& name, QWidget* view);
    void see(int index);
    void showRevisions();
    void read();
    void compare();
    void save();
    [[nodiscard]] const RegisteredPolicy* chosen(const QComboBox* list) const;
    [[nodiscard]] QString nameOf(const RegisteredPolicy& policy) const;

    RegistersNow m_registers;
    QLabel* m_now;
    std::vector<QPushButton*> m_tabs;
    std::vector<QWidget*> m_views;
    QStackedWidget* m_stack;
    QComboBox* m_read;
    QLabel* m_about;
    PolicyTable* m_table;
    FileEdit* m_saveAs;
    Field* m_saveField;
    QComboBox* m_before;
    QComboBox* m_after;
    QLabel* m_differ;
    PolicyTable* m_differences;
    PolicyForm* m_form;
};

} // namespace loadwarden::ui
