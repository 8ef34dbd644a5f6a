#include "ui/settings/pin_form.h"

#include "ui/parts/field.h"
#include "ui/parts/pin_entry.h"
#include "ui/settings/person_form.h"

#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

PinForm::PinForm(const Workstation& workstation, std::string person)
    : RegisterForm(workstation, Task::setOthersPin,
                   tr("A supervisor sets the PIN of somebody else; your own you set yourself.")),
      m_id(std::move(person)),
      m_now(makeMuted({})),
      m_pin(makePinLine()),
      m_again(makePinLine()),
      m_pinField(nullptr),
      m_againField(nullptr)
{
    beginGroup(tr("PIN"));
    m_now->setContentsMargins(0, 0, 0, space::small);
    addWide(m_now);
    m_pinField = addField("", tr("New PIN"), m_pin,
                          tr("6 to 12 digits, not all the same and not in a row."));
    m_againField = addField("", tr("New PIN once more"), m_again);
    addButtons(tr("Check and sign the new PIN"));
    connect(this, &RegisterForm::recorded, this, &PinForm::putBack);
    putBack();
}

Task PinForm::task() const
{
    return m_id == workstation().session.person().id ? Task::setOwnPin : Task::setOthersPin;
}

void PinForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.people, m_id, &Person::id);
    if (found != registers.people.end()) {
        m_person = *found;
        m_now->setText(m_person.hasPin ? tr("There is a PIN. A new one takes its place.")
                                       : tr("There is no PIN yet: without one nobody signs in."));
    }
}

void PinForm::putBack()
{
    m_pin->clear();
    m_again->clear();
    filled();
}

std::optional<Wanted> PinForm::wanted()
{
    const PinTrouble trouble = pinTrouble(m_pin->text(), m_again->text());
    setError(m_pinField, trouble.pin);
    setError(m_againField, trouble.again);
    if (!trouble.pin.isEmpty() || !trouble.again.isEmpty()) {
        return std::nullopt;
    }
    const QString name = text(m_person.name);
    return Wanted{.acts = {{.act = StaffPinSet{}, .subjects = {m_id}}},
                  .what = tr("Set a new PIN for %1").arg(name),
                  .seen = {tr("the PIN from before is good no longer")},
                  .done = tr("The PIN of %1 is set.").arg(name),
                  .signing = [id = m_id, pin = m_pin->text().toStdString()](
                                 Office& office, const SignedIn& who, Signature signature) {
                      return SignIn(office).setPin(who, std::move(signature), id, pin);
                  }};
}

} // namespace loadwarden::ui
