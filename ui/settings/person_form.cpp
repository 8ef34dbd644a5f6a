#include "ui/settings/person_form.h"

#include "core/desk/enrolling.h"
#include "core/desk/pin_book.h"
#include "core/words/say_refusal.h"
#include "ui/parts/field.h"
#include "ui/parts/pin_entry.h"
#include "ui/shell/role_text.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>

#include <algorithm>
#include <array>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::array roles = {Role::viewer, Role::operating, Role::lead, Role::supervisor};

} // namespace

PinTrouble pinTrouble(const QString& pin, const QString& again)
{
    PinTrouble trouble;
    if (const auto refusal = whyNoPin(pin.toStdString())) {
        const Told told = say(*refusal, {});
        trouble.pin = text(told.says) + u' ' + text(told.next);
    } else if (pin != again) {
        trouble.again = PersonForm::tr("The two are not the same. Type it again.");
    }
    return trouble;
}

PersonForm::PersonForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::StaffRecorded, tr("A supervisor registers the staff.")),
      m_id(std::move(id)),
      m_name(new QLineEdit),
      m_role(new QComboBox),
      m_badge(new QLineEdit),
      m_active(new QCheckBox(tr("Works here and may sign in"))),
      m_pin(makePinLine()),
      m_again(makePinLine())
{
    m_recorded.role = Role::operating;
    for (const Role role : roles) {
        m_role->addItem(roleText(role));
    }
    m_badge->setProperty("takesScans", true);
    beginGroup(isNew() ? tr("Somebody new") : tr("As the journal has them"));
    m_nameField = addField("name", tr("&Name"), m_name, tr("As it is to stand in the record."));
    addField("role", tr("Role"), m_role, tr("It says what they may record and sign."));
    addField("badge", tr("Ba&dge"), m_badge, tr("Scan it or type its number. May be left out."));
    if (isNew()) {
        delete std::exchange(m_active, nullptr);
        beginGroup(tr("A first PIN"), tr("6 to 12 digits, not all the same and not in a row. They "
                                         "change it when they first sign in."));
        m_pinField = addField("", tr("PIN"), m_pin);
        m_againField = addField("", tr("PIN once more"), m_again);
    } else {
        addWide(m_active);
        addEditor(m_active);
        delete std::exchange(m_pin, nullptr);
        delete std::exchange(m_again, nullptr);
    }
    addButtons(isNew() ? tr("Check and sign") : tr("Check and sign the change"));
    setFocusProxy(m_name);
    putBack();
}

void PersonForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.people, m_id, &Person::id);
    if (found != registers.people.end() && !isTouched()) {
        m_recorded = {.name = found->name,
                      .role = found->role,
                      .badge = found->badge,
                      .active = found->active};
        putBack();
    }
}

void PersonForm::putBack()
{
    m_name->setText(text(m_recorded.name));
    m_role->setCurrentIndex(
        static_cast<int>(std::ranges::find(roles, m_recorded.role) - roles.begin()));
    m_badge->setText(text(m_recorded.badge));
    if (m_active != nullptr) {
        m_active->setChecked(m_recorded.active);
    }
    if (m_pin != nullptr) {
        m_pin->clear();
        m_again->clear();
    }
    filled();
}

bool PersonForm::isPinGood()
{
    if (m_pin == nullptr) {
        return true;
    }
    const PinTrouble trouble = pinTrouble(m_pin->text(), m_again->text());
    setError(m_pinField, trouble.pin);
    setError(m_againField, trouble.again);
    return trouble.pin.isEmpty() && trouble.again.isEmpty();
}

QStringList PersonForm::seen(const StaffRecorded& person) const
{
    QStringList lines{tr("role: %1").arg(roleText(person.role)),
                      person.badge.empty() ? tr("no badge")
                                           : tr("badge: %1").arg(text(person.badge))};
    if (isNew()) {
        lines << tr("with a first PIN");
    } else {
        lines << (person.active ? tr("works here") : tr("does not work here any more"));
    }
    return lines;
}

std::optional<Wanted> PersonForm::wanted()
{
    const bool isNamed = needs(m_nameField, tr("Type the name."));
    if (!isPinGood() || !isNamed) {
        return std::nullopt;
    }
    const QString name = m_name->text().trimmed();
    const StaffRecorded person{.name = name.toStdString(),
                               .role = roles[static_cast<std::size_t>(m_role->currentIndex())],
                               .badge = m_badge->text().trimmed().toStdString(),
                               .active = m_active == nullptr || m_active->isChecked()};
    const std::string id = isNew() ? RandomIdSource().next("st") : m_id;
    Wanted wanted{.acts = {{.act = person, .subjects = {id}}},
                  .what = isNew() ? tr("Register %1").arg(name)
                                  : tr("Change the entry of %1").arg(name),
                  .seen = seen(person),
                  .done = tr("%1 is registered.").arg(name)};
    if (isNew()) {
        wanted.signing = [id, person, pin = m_pin->text().toStdString()](
                             Office& office, const SignedIn& who, const Signature& signature) {
            return enrol(office, who, signature, id, person, pin);
        };
    }
    return wanted;
}

} // namespace loadwarden::ui
