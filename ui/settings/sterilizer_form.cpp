#include "ui/settings/sterilizer_form.h"

#include "core/words/say.h"
#include "ui/parts/clock_text.h"
#include "ui/parts/field.h"
#include "ui/settings/number_edit.h"

#include <QCheckBox>
#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

SterilizerForm::SterilizerForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::SterilizerRecorded, tr("A supervisor records sterilizers.")),
      m_id(std::move(id)),
      m_number(new QLineEdit),
      m_name(new QLineEdit),
      m_model(new QLineEdit),
      m_test(new QLineEdit),
      m_concentration(new QCheckBox(tr("Its record shows the gas concentration"))),
      m_humidity(new QCheckBox(tr("Its record shows the humidity"))),
      m_minutes(new NumberEdit(tr("min"))),
      m_celsius(new NumberEdit(tr("°C"), 2))
{
    beginGroup(isNew() ? tr("New sterilizer") : tr("The sterilizer"));
    if (isNew()) {
        m_numberField = addField(
            "", tr("N&umber"), m_number,
            tr("Its lot control numbers begin with it: 1 to 8 digits or capital letters."));
    }
    m_nameField = addField("name", tr("&Name"), m_name, tr("As its printout calls it."));
    addField("model", tr("&Model"), m_model, tr("May be left out."));
    m_testField = addField("testMinute", tr("Test period begins at"), m_test,
                           tr("As 06:00: from then on the day's air-removal test is asked for."));
    beginGroup(tr("Ethylene oxide"), tr("Of other sterilizers leave this as it is."));
    addWide(m_concentration);
    addWide(m_humidity);
    addEditor(m_concentration);
    addEditor(m_humidity);
    m_minutesField = addField("minutes", tr("Aerates its loads for"), m_minutes,
                              tr("Empty: it does not aerate."));
    m_celsiusField = addField("celsiusHundredths", tr("Aerates them at"), m_celsius);
    addButtons(isNew() ? tr("Check and sign") : tr("Check and sign the change"));
    setFocusProxy(isNew() ? m_number : m_name);
    if (!isNew()) {
        delete std::exchange(m_number, nullptr);
        setFocusProxy(m_name);
    }
    putBack();
}

void SterilizerForm::show(const Registers& registers)
{
    m_taken.clear();
    for (const RegisteredSterilizer& each : registers.sterilizers) {
        m_taken.push_back(each.id);
    }
    m_free = freeSterilizerNumber(registers);
    if (isTouched()) {
        return;
    }
    const auto found = std::ranges::find(registers.sterilizers, m_id, &RegisteredSterilizer::id);
    if (found != registers.sterilizers.end()) {
        m_recorded = found->recorded;
    }
    putBack();
}

void SterilizerForm::putBack()
{
    if (m_number != nullptr) {
        m_number->setText(text(m_free));
    }
    m_name->setText(text(m_recorded.name));
    m_model->setText(text(m_recorded.model));
    m_test->setText(minuteText(m_recorded.testMinute));
    m_concentration->setChecked(m_recorded.recordsConcentration);
    m_humidity->setChecked(m_recorded.recordsHumidity);
    const auto& aeration = m_recorded.aeration;
    m_minutes->setWhole(aeration ? std::optional(aeration->minutes) : std::nullopt);
    m_celsius->set(aeration ? std::optional(aeration->celsiusHundredths * 10) : std::nullopt);
    filled();
}

bool SterilizerForm::readNumber(std::string& id)
{
    if (!isNew()) {
        id = m_id;
        return true;
    }
    const QString number = m_number->text().trimmed();
    id = "sz-" + number.toStdString();
    const bool isTaken = std::ranges::find(m_taken, id) != m_taken.end();
    setError(m_numberField, number.isEmpty()
                                ? tr("Type the number with which its lot control numbers begin.")
                            : isTaken ? tr("There is a sterilizer with this number. Take another.")
                                      : QString());
    return !number.isEmpty() && !isTaken;
}

bool SterilizerForm::readAeration(SterilizerRecorded& made)
{
    const auto minutes = m_minutes->whole();
    const auto celsius = m_celsius->thousandths();
    const bool isNone = m_minutes->isEmpty() && m_celsius->isEmpty();
    setError(m_minutesField, isNone || minutes ? QString() : tr("Type whole minutes."));
    setError(m_celsiusField,
             isNone || celsius ? QString() : tr("Type it in °C, with at most two decimals."));
    if (minutes && celsius) {
        made.aeration = SterilizerAeration{.minutes = *minutes, .celsiusHundredths = *celsius / 10};
    }
    return isNone || (minutes && celsius);
}

std::optional<Wanted> SterilizerForm::wanted()
{
    SterilizerRecorded made{.name = m_name->text().trimmed().toStdString(),
                            .model = m_model->text().trimmed().toStdString(),
                            .recordsConcentration = m_concentration->isChecked(),
                            .recordsHumidity = m_humidity->isChecked()};
    std::string id;
    bool isGood = readNumber(id);
    isGood = needs(m_nameField, tr("Type its name.")) && isGood;
    const auto minute = minuteOfDayIn(m_test->text());
    setError(m_testField, minute ? QString() : tr("Type the time as 06:00."));
    isGood = readAeration(made) && isGood && minute;
    if (!isGood) {
        return std::nullopt;
    }
    made.testMinute = *minute;
    const QString name = m_name->text().trimmed();
    QStringList seen{tr("its lot control numbers begin with %1").arg(text(id.substr(3))),
                     tr("its test period begins at %1").arg(minuteText(made.testMinute))};
    if (!made.model.empty()) {
        seen.prepend(tr("model: %1").arg(text(made.model)));
    }
    if (made.aeration) {
        seen << tr("aerates for %1 at %2")
                    .arg(text(sayQuantity({Unit::minutes, made.aeration->minutes * 1000})),
                         text(sayQuantity({Unit::celsius, made.aeration->celsiusHundredths * 10})));
    }
    if (!made.recordsConcentration) {
        seen << tr("its record does not show the gas concentration");
    }
    if (!made.recordsHumidity) {
        seen << tr("its record does not show the humidity");
    }
    return Wanted{.acts = {{.act = made, .subjects = {id}}},
                  .what = isNew() ? tr("Record the sterilizer %1").arg(name)
                                  : tr("Change the sterilizer %1").arg(name),
                  .seen = seen,
                  .done = tr("The sterilizer %1 is recorded.").arg(name)};
}

} // namespace loadwarden::ui
