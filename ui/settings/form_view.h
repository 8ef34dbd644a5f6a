#pragma once

#include "ui/settings/register_form.h"
#include "ui/settings/register_section.h"

#include <string>

namespace loadwarden::ui {

/// One thing of a register under its name, with the form of the thing itself; more may be added.
template <class Form>
class FormView : public EntryView {
public:
    /// Something new where `id` is empty.
    FormView(const Workstation& workstation, const QString& id)
        : m_id(id.toStdString()), m_form(new Form(workstation, m_id))
    {
        if (!isNew()) {
            m_name = makeLabel({}, Type::title);
            add(m_name);
        }
        add(m_form);
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        setFocusProxy(m_form);
    }

    void show(const Registers& registers) override
    {
        m_form->show(registers);
        if (!isNew()) {
            m_name->setText(text(registers.names.of(m_id)));
        }
    }

protected:
    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    [[nodiscard]] const std::string& id() const { return m_id; }

private:
    std::string m_id;
    QLabel* m_name = nullptr;
    Form* m_form;
};

} // namespace loadwarden::ui
