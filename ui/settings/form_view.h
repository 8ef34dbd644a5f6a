#pragma once

#include "ui/settings/register_form.h"
#include "ui/settings/register_section.h"

#include <string>

namespace loadwarden::ui {

/// One thing of a register under its name. Whoever inherits adds the form of the thing itself where
/// it belongs among what else is recorded about it.
template <class Form>
class NamedView : public EntryView {
public:
    void show(const Registers& registers) override
    {
        m_form->show(registers);
        if (!isNew()) {
            m_name->setText(text(registers.names.of(m_id)));
        }
    }

protected:
    /// Something new where `id` is empty.
    NamedView(const Workstation& workstation, const QString& id)
        : m_id(id.toStdString()), m_form(new Form(workstation, m_id))
    {
        if (!isNew()) {
            m_name = makeLabel({}, Type::title);
            add(m_name);
        }
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        setFocusProxy(m_form);
    }

    [[nodiscard]] bool isNew() const { return m_id.empty(); }
    [[nodiscard]] const std::string& id() const { return m_id; }
    [[nodiscard]] Form* form() const { return m_form; }

private:
    std::string m_id;
    QLabel* m_name = nullptr;
    Form* m_form;
};

/// The same with the form first.
template <class Form>
class FormView : public NamedView<Form> {
public:
    FormView(const Workstation& workstation, const QString& id) : NamedView<Form>(workstation, id)
    {
        this->add(this->form());
    }
};

} // namespace loadwarden::ui
