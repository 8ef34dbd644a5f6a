#include "ui/settings/service_forms.h"

#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/parts/field.h"
#include "ui/parts/time_edit.h"
#include "ui/settings/number_edit.h"

#include <QComboBox>
#include <QLineEdit>

#include <array>
#include <cstdlib>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr std::array outStates = {ServiceState::outOfService, ServiceState::qualification,
                                  ServiceState::held};

} // namespace

TakeOutForm::TakeOutForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::SterilizerTakenOut,
                   tr("An operator takes sterilizers out of service.")),
      m_id(std::move(id)),
      m_state(new QComboBox),
      m_why(new QLineEdit),
      m_whyField(nullptr)
{
    for (const ServiceState each : outStates) {
        m_state->addItem(text(say(each)));
    }
    beginGroup(tr("Service"));
    addField("state", tr("It is from now on"), m_state);
    m_whyField = addField("why", tr("Reas&on"), m_why, tr("What was seen, and who was told."));
    addButtons(tr("Take it out of service"));
    connect(this, &RegisterForm::recorded, this, &TakeOutForm::putBack);
    putBack();
}

void TakeOutForm::show(const RegisteredSterilizer& sterilizer)
{
    m_name = text(sterilizer.recorded.name);
    setVisible(sterilizer.service.state == ServiceState::inService || isTouched());
}

void TakeOutForm::putBack()
{
    m_state->setCurrentIndex(0);
    m_why->clear();
    filled();
}

std::optional<Wanted> TakeOutForm::wanted()
{
    if (!needs(m_whyField, tr("Say why, in a few words."))) {
        return std::nullopt;
    }
    return Wanted{.acts = {{.act =
                                SterilizerTakenOut{
                                    outStates[static_cast<std::size_t>(m_state->currentIndex())],
                                    m_why->text().trimmed().toStdString()},
                            .subjects = {m_id}}},
                  .what = {},
                  .seen = {},
                  .done =
                      tr("%1 is out of service: no load is released from it until it is returned.")
                          .arg(m_name)};
}

ReturnForm::ReturnForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::SterilizerReturned,
                   tr("A supervisor returns sterilizers to service.")),
      m_id(std::move(id)),
      m_why(new QLineEdit),
      m_whyField(nullptr)
{
    beginGroup(tr("Service"));
    m_whyField = addField("why", tr("Reas&on"), m_why,
                          tr("What was repaired, and by which tests it was qualified."));
    addButtons(tr("Check and sign the return"));
    connect(this, &RegisterForm::recorded, this, &ReturnForm::putBack);
    putBack();
}

void ReturnForm::show(const RegisteredSterilizer& sterilizer)
{
    m_name = text(sterilizer.recorded.name);
    m_now = sterilizer.service.why.empty()
                ? text(say(sterilizer.service.state))
                : tr("%1: %2", "a state, and why")
                      .arg(text(say(sterilizer.service.state)), text(sterilizer.service.why));
    setVisible(sterilizer.service.state != ServiceState::inService || isTouched());
}

void ReturnForm::putBack()
{
    m_why->clear();
    filled();
}

std::optional<Wanted> ReturnForm::wanted()
{
    if (!needs(m_whyField, tr("Say why it may run again."))) {
        return std::nullopt;
    }
    const QString why = m_why->text().trimmed();
    return Wanted{
        .acts = {{.act = SterilizerReturned{why.toStdString()}, .subjects = {m_id}}},
        .what = tr("Return %1 to service").arg(m_name),
        .seen = {tr("until now it was %1").arg(m_now), tr("it may run again because: %1").arg(why)},
        .done = tr("%1 is in service.").arg(m_name)};
}

ClockForm::ClockForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::ClockCompared, tr("An operator compares clocks.")),
      m_id(std::move(id)),
      m_last(makeMuted({})),
      m_seconds(new NumberEdit(tr("s"))),
      m_side(new QComboBox),
      m_from(new TimeEdit(workstation.desk.about().zone.value_or(*Zone::find("UTC")),
                          workstation.desk.now())),
      m_secondsField(nullptr),
      m_fromField(nullptr)
{
    m_side->addItems({tr("ahead of the facility's"), tr("behind the facility's")});
    beginGroup(tr("Its clock"), tr("Compare it with a clock of the facility that is right; what "
                                   "its printouts say is corrected by the difference."));
    m_last->setContentsMargins(0, 0, 0, space::small);
    addWide(m_last);
    m_secondsField = addField("seconds", tr("It differs by"), m_seconds, tr("0: it is right."));
    addField("", tr("It is"), m_side);
    m_fromField = addField("from", tr("Since"), m_from, tr("As its own clock shows that time."));
    addButtons(tr("Record the comparison"));
    connect(this, &RegisterForm::recorded, this, &ClockForm::putBack);
    putBack();
}

void ClockForm::show(const RegisteredSterilizer& sterilizer)
{
    m_name = text(sterilizer.recorded.name);
    if (!sterilizer.clock) {
        m_last->setText(tr("It has not been compared yet."));
    } else {
        const std::int64_t seconds = sterilizer.clock->seconds;
        const QString since = text(sayTime(sterilizer.clock->from.at, workstation().desk.style()));
        m_last->setText(
            seconds == 0 ? tr("As compared last: right since %1.").arg(since)
            : seconds > 0
                ? tr("As compared last: %1 s ahead since %2.").arg(QString::number(seconds), since)
                : tr("As compared last: %1 s behind since %2.")
                      .arg(QString::number(std::abs(seconds)), since));
    }
    if (!isTouched()) {
        putBack();
    }
}

void ClockForm::putBack()
{
    m_seconds->set(std::nullopt);
    m_side->setCurrentIndex(0);
    m_from->set(workstation().desk.now());
    filled();
}

std::optional<Wanted> ClockForm::wanted()
{
    const auto seconds = m_seconds->whole();
    setError(m_secondsField,
             seconds && *seconds >= 0
                 ? QString()
                 : tr("Type whole seconds; whether it is ahead or behind stands beside it."));
    const QString wrongTime = m_from->whatIsWrong();
    setError(m_fromField, wrongTime);
    if (!seconds || *seconds < 0 || !wrongTime.isEmpty()) {
        return std::nullopt;
    }
    return Wanted{
        .acts = {{.act = ClockCompared{*m_from->value(),
                                       m_side->currentIndex() == 0 ? *seconds : -*seconds},
                  .subjects = {m_id}}},
        .what = {},
        .seen = {},
        .done = tr("The clock of %1 is compared.").arg(m_name)};
}

} // namespace loadwarden::ui
