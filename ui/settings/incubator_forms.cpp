#include "ui/settings/incubator_forms.h"

#include "core/words/say.h"
#include "ui/parts/field.h"
#include "ui/parts/time_edit.h"

#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

IncubatorForm::IncubatorForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::IncubatorRecorded,
                   tr("A lead or a supervisor records incubators.")),
      m_id(std::move(id)),
      m_name(new QLineEdit),
      m_nameField(nullptr)
{
    beginGroup(isNew() ? tr("New incubator") : tr("The incubator"));
    m_nameField = addField("name", tr("&Name"), m_name, tr("As it is to be told from the others."));
    addButtons(isNew() ? tr("Record the incubator") : tr("Record the change"));
    setFocusProxy(m_name);
    putBack();
}

void IncubatorForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.incubators, m_id, &RegisteredIncubator::id);
    if (found != registers.incubators.end() && !isTouched()) {
        m_recorded = found->recorded;
        putBack();
    }
}

void IncubatorForm::putBack()
{
    m_name->setText(text(m_recorded.name));
    filled();
}

std::optional<Wanted> IncubatorForm::wanted()
{
    if (!needs(m_nameField, tr("Type its name."))) {
        return std::nullopt;
    }
    const QString name = m_name->text().trimmed();
    return Wanted{.acts = {{.act = IncubatorRecorded{name.toStdString()},
                            .subjects = {isNew() ? RandomIdSource().next("in") : m_id}}},
                  .what = {},
                  .seen = {},
                  .done = tr("The incubator %1 is recorded.").arg(name)};
}

RangeForm::RangeForm(const Workstation& workstation, std::string id, Says says)
    : RegisterForm(workstation,
                   says == Says::outOfRange ? Task::IncubatorOutOfRange : Task::IncubatorInRange,
                   tr("An operator records whether an incubator is in range.")),
      m_id(std::move(id)),
      m_says(says),
      m_since(new TimeEdit(workstation.desk.about().zone.value_or(*Zone::find("UTC")),
                           workstation.desk.now())),
      m_sinceField(nullptr)
{
    const bool isOut = m_says == Says::outOfRange;
    beginGroup(isOut ? tr("Out of range") : tr("In range again"),
               isOut ? tr("When its temperature is not in the range that its instructions for use "
                          "state. The vials that were in it are judged by that.")
                     : tr("Once its temperature is in the range that its instructions for use "
                          "state."));
    m_sinceField =
        addField("happenedAt", tr("Since"), m_since,
                 isOut ? tr("No time: now. If nobody saw it: when it was last seen in range.")
                       : tr("No time: now."));
    spanLast();
    addButtons(isOut ? tr("Put it out of range") : tr("Put it in range again"));
    connect(this, &RegisterForm::recorded, this, &RangeForm::putBack);
    putBack();
}

void RangeForm::show(const RegisteredIncubator& incubator)
{
    m_incubator = incubator;
    setVisible(incubator.outSince().has_value() == (m_says == Says::inRange) || isTouched());
    if (!isTouched()) {
        putBack();
    }
}

void RangeForm::putBack()
{
    m_since->set(workstation().desk.now());
    m_since->clearTime();
    m_date = m_since->dateLine()->text();
    filled();
}

std::optional<Wanted> RangeForm::wanted()
{
    const bool isNow = m_since->isEmpty() && m_since->dateLine()->text() == m_date;
    const auto since = isNow ? std::nullopt : m_since->value();
    QString wrong = isNow ? QString() : m_since->whatIsWrong();
    const bool isOut = m_says == Says::outOfRange;
    if (since && !isOut && !m_incubator.isEndedBy(since->at)) {
        wrong = tr("It was out of range after that, too. Type when it was in range again.");
    }
    setError(m_sinceField, wrong);
    if (!wrong.isEmpty()) {
        return std::nullopt;
    }
    const QString name = text(m_incubator.recorded.name);
    return Wanted{
        .acts = {{.act = isOut ? AnyAct(IncubatorOutOfRange{}) : AnyAct(IncubatorInRange{}),
                  .subjects = {m_id},
                  .happenedAt = since}},
        .what = {},
        .seen = {},
        .done = isOut ? tr("%1 is out of range.").arg(name) : tr("%1 is in range.").arg(name)};
}

} // namespace loadwarden::ui
