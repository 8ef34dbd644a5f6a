#include "ui/settings/staff_section.h"

#include "ui/settings/form_view.h"
#include "ui/settings/person_form.h"
#include "ui/settings/pin_form.h"
#include "ui/shell/role_text.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

class PersonView : public FormView<PersonForm> {
public:
    PersonView(const Workstation& workstation, const QString& id)
        : FormView<PersonForm>(workstation, id)
    {
        if (!isNew()) {
            addRule();
            m_pin = new PinForm(workstation, this->id());
            add(m_pin);
        }
    }

    void show(const Registers& registers) override
    {
        FormView<PersonForm>::show(registers);
        if (m_pin != nullptr) {
            m_pin->show(registers);
        }
    }

private:
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
