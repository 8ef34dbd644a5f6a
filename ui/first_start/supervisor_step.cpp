#include "ui/first_start/supervisor_step.h"

#include "core/desk/pin_book.h"
#include "core/words/say_refusal.h"
#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/pin_entry.h"

#include <QLineEdit>

namespace loadwarden::ui {

SupervisorStep::SupervisorStep(QWidget* parent)
    : Step(tr("The first supervisor"),
           tr("A supervisor registers the others, returns sterilizers to service and signs the "
              "policy. Everything that is signed asks for a PIN."),
           parent),
      m_name(new QLineEdit),
      m_badge(new QLineEdit),
      m_pin(makePinLine()),
      m_again(makePinLine()),
      m_nameField(new Field(tr("&Name"), m_name, tr("As it is to stand in the record."))),
      m_badgeField(
          new Field(tr("&Badge"), m_badge, tr("Scan it or type its number. May be left out."))),
      m_pinField(
          new Field(tr("&PIN"), m_pin, tr("6 to 12 digits, not all the same and not in a row."))),
      m_againField(new Field(tr("PIN once &more"), m_again))
{
    add(m_nameField);
    add(m_badgeField);
    add(m_pinField);
    add(m_againField);
    setFocusProxy(m_name);
}

bool SupervisorStep::check()
{
    const bool isNamed = needs(m_nameField, m_name, tr("Type the supervisor's name."));
    const auto refusal = whyNoPin(m_pin->text().toStdString());
    if (refusal) {
        const Told told = say(*refusal, {});
        m_pinField->setError(text(told.says) + u' ' + text(told.next));
    } else {
        m_pinField->setError({});
    }
    const bool isSame = m_pin->text() == m_again->text();
    m_againField->setError(isSame ? QString() : tr("The two are not the same. Type it again."));
    return isNamed && !refusal && isSame;
}

void SupervisorStep::fill(FirstDay& day) const
{
    day.founding.supervisorName = m_name->text().trimmed().toStdString();
    day.founding.supervisorBadge = m_badge->text().trimmed().toStdString();
    day.founding.supervisorPin = m_pin->text().toStdString();
}

} // namespace loadwarden::ui
