#pragma once

#include "ui/settings/register_list.h"
#include "ui/settings/section.h"

#include <map>
#include <vector>

class QPushButton;
class QScrollArea;
class QStackedWidget;
class QVBoxLayout;

namespace loadwarden::ui {

class EmptyState;
class RegisterForm;

/// One thing of a register with everything that can be recorded about it: its forms.
class EntryView : public QWidget {
    Q_OBJECT

public:
    /// What is recorded now; forms in which somebody has typed stay as they are.
    virtual void show(const Registers& registers) = 0;

    [[nodiscard]] bool isTouched() const;
    void lookAtRights();
    /// Tab goes through it as it is read, also through what was added later.
    void orderTabs();

protected:
    EntryView();
    void add(RegisterForm* form);
    void add(QWidget* widget);
    /// A form that stands within a widget which is added.
    void keep(RegisterForm* form);
    void addRule();

signals:
    void touched();
    /// Of the thing itself, by its id.
    void recorded(const QString& id);
    void says(const QString& what, const QString& next);

private:
    QVBoxLayout* m_column;
    std::vector<RegisterForm*> m_forms;
};

/// A section with a list of what a register holds, and beside it what is chosen. What is typed
/// about one thing stays while another is looked at.
class RegisterSection : public Section {
    Q_OBJECT

public:
    struct Words {
        QString title;
        QString belongs; ///< what belongs here
        QString add;     ///< "Add a product"; empty: nothing is added here
        QString fresh;   ///< "New product"
        QString empty;   ///< heading where there is none
        QString teaches; ///< the first step, where there is none
    };

    void show(const RegistersNow& registers) final;
    void notRead() final;
    void lookAtRights() final;

protected:
    RegisterSection(const Workstation& workstation, const Words& words, Task adding);

    [[nodiscard]] virtual std::vector<RegisterLine> lines(const Registers& registers) const = 0;
    /// Something new where `id` is empty.
    [[nodiscard]] virtual EntryView* makeView(const QString& id) = 0;

private:
    void showLines();
    void choose(const QString& id);
    void addNew();
    EntryView* viewOf(const QString& id);

    struct Kept {
        EntryView* view;
        QScrollArea* scroll;
    };

    Words m_words;
    Task m_adding;
    RegistersNow m_registers;
    QPushButton* m_add;
    RegisterList* m_list;
    QStackedWidget* m_stack;
    QWidget* m_left;
    EmptyState* m_reading; ///< until it is known what there is
    EmptyState* m_unread;
    EmptyState* m_empty;
    std::map<QString, Kept> m_views;
    bool m_hasNew = false; ///< something new is being typed
    QString m_chooseNext;  ///< once it stands in the register
};

} // namespace loadwarden::ui
