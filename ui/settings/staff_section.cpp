#include "ui/settings/staff_section.h"

#include "ui/settings/person_form.h"
#include "ui/settings/pin_form.h"
#include "ui/shell/role_text.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

class PersonView : public EntryView {
public:
    PersonView(const Workstation& workstation, const QString& id)
        : m_id(id.toStdString()), m_form(new PersonForm(workstation, m_id))
    {
        if (!m_id.empty()) {
            m_name = makeLabel({}, Type::title);
            add(m_name);
        }
        add(m_form);
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        if (!m_id.empty()) {
            addRule();
            m_pin = new PinForm(workstation, m_id);
            add(m_pin);
        }
        setFocusProxy(m_form);
    }

    void show(const Registers& registers) override
    {
        m_form->show(registers);
        if (m_pin != nullptr) {
            m_pin->show(registers);
            m_name->setText(text(registers.names.of(m_id)));
        }
    }

private:
    std::string m_id;
    QLabel* m_name = nullptr;
    PersonForm* m_form;
    PinForm* m_pin = nullptr;
};

} // namespace

StaffSection::StaffSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Staff"),
         .belongs = tr("Who works here, and in which role. Everybody sets their own PIN; a "
                       "supervisor registers people and sets a PIN that was forgotten."),
         .add = tr("Add somebody"),
         .fresh = tr("Somebody new"),
         .empty = tr("Nobody is registered yet"),
         .teaches = tr("A supervisor registers everybody who works at the sterilizers, with a "
                       "first PIN.")},
        Task::StaffRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> StaffSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const Person& each : registers.people) {
        QString words = roleText(each.role);
        if (!each.active) {
            words = tr("%1; does not work here any more").arg(words);
        } else if (!each.hasPin) {
            words = tr("%1; no PIN yet").arg(words);
        } else if (!each.badge.empty()) {
            words = tr("%1, badge %2").arg(words, text(each.badge));
        }
        all.push_back({text(each.id), text(each.name), words, !each.active});
    }
    std::ranges::stable_partition(all, [](const RegisterLine& line) { return !line.isPast; });
    return all;
}

EntryView* StaffSection::makeView(const QString& id)
{
    return new PersonView(workstation(), id);
}

} // namespace loadwarden::ui
