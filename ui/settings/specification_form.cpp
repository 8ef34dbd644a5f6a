#include "ui/settings/specification_form.h"

#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/parts/field.h"
#include "ui/settings/limits_grid.h"
#include "ui/shell/local_settings.h"

#include <QComboBox>
#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {
namespace {

QString valuesText(const std::vector<Quantity>& values)
{
    QStringList all;
    for (const Quantity& each : values) {
        all << text(sayQuantity(each));
    }
    return all.join(QStringLiteral(" / "));
}

QStringList limitLines(const CycleSpecification& specification)
{
    QStringList lines;
    for (const Limit& limit : specification.limits) {
        QStringList parts;
        if (!limit.least.empty()) {
            parts << SpecificationForm::tr("at least %1").arg(valuesText(limit.least));
        }
        if (!limit.most.empty()) {
            parts << SpecificationForm::tr("at most %1").arg(valuesText(limit.most));
        }
        lines << SpecificationForm::tr("%1: %2", "a parameter, its limits")
                     .arg(text(say(limit.parameter)), parts.join(QStringLiteral(", ")));
    }
    if (lines.isEmpty()) {
        lines << SpecificationForm::tr("no limits: nothing of its record is judged by a number");
    }
    return lines;
}

} // namespace

QString specificationText(const CycleSpecification& specification)
{
    // What it is run for tells programs of one name apart.
    const QString said = SpecificationForm::tr("%1, %2").arg(text(say(specification.purpose)),
                                                             text(say(specification.method)));
    return specification.airRemoval == AirRemoval::unknown
               ? said
               : SpecificationForm::tr("%1, %2").arg(said, text(say(specification.airRemoval)));
}

SpecificationForm::SpecificationForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::SpecificationRecorded,
                   tr("A supervisor records cycle specifications.")),
      m_id(std::move(id)),
      m_library(SpecificationLibrary::builtIn()),
      m_template(new QComboBox),
      m_about(makeMuted({})),
      m_program(new QLineEdit),
      m_limits(new LimitsGrid(workstation.settings.temperatureUnit(),
                              workstation.settings.pressureUnit()))
{
    beginGroup(isNew() ? tr("New specification") : tr("The program"),
               tr("Compare every number with the validated program of the sterilizer and with the "
                  "instructions for use of sterilizer, packaging and devices: they come first."));
    if (isNew()) {
        for (const std::string& name : m_library.names()) {
            m_template->addItem(text(name));
        }
        addField("", tr("Copy of the template"), m_template);
        connect(m_template, &QComboBox::currentIndexChanged, this,
                &SpecificationForm::takeTemplate);
    }
    m_programField = addField("program", tr("Pro&gram"), m_program,
                              tr("As the printout calls it: by it a load's printout is compared."));
    addWide(m_about);
    beginGroup();
    m_limitsField = addField("limits", tr("Limits of its record"), m_limits,
                             tr("Both values of a limit count. Empty: no such limit."));
    spanLast();
    addButtons(isNew() ? tr("Check and sign") : tr("Check and sign the revision"));
    if (isNew()) {
        setFocusProxy(m_template);
        takeTemplate();
        filled();
    } else {
        delete std::exchange(m_template, nullptr);
        setFocusProxy(m_program);
        filled(); // with nothing yet
    }
}

void SpecificationForm::takeTemplate()
{
    if (const auto* const found = m_library.find(m_template->currentText().toStdString())) {
        m_recorded = *found;
        m_limits->set(m_recorded);
        tell();
    }
}

void SpecificationForm::tell()
{
    m_about->setText(
        tr("%1, revision %2: %3. Cycle type: %4.")
            .arg(text(m_recorded.id), QString::number(m_recorded.revision),
                 specificationText(m_recorded),
                 m_recorded.cycleType.empty() ? tr("not stated") : text(m_recorded.cycleType)));
}

void SpecificationForm::show(const Registers& registers)
{
    const auto found =
        std::ranges::find(registers.specifications, m_id, &RegisteredSpecification::id);
    if (found != registers.specifications.end() && !isTouched()) {
        m_recorded = found->recorded.specification;
        putBack();
    }
}

void SpecificationForm::putBack()
{
    if (isNew()) {
        m_template->setCurrentIndex(0);
        m_program->clear();
        takeTemplate();
    } else {
        m_program->setText(text(m_recorded.program));
        m_limits->set(m_recorded);
        tell();
    }
    filled();
}

std::optional<Wanted> SpecificationForm::wanted()
{
    CycleSpecification made = m_recorded;
    made.program = m_program->text().trimmed().toStdString();
    const bool isNamed = needs(m_programField, tr("Type how the printout names the program."));
    const bool isRead = m_limits->read(made);
    setError(m_limitsField,
             isRead ? QString() : tr("What is marked is no number with at most three decimals."));
    m_limits->mark();
    if (!isNamed || !isRead) {
        return std::nullopt;
    }
    if (!isNew()) {
        if (made == m_recorded) {
            setError(m_limitsField, tr("Nothing differs from what is recorded."));
            m_limits->mark();
            return std::nullopt;
        }
        ++made.revision;
    }
    const QString program = m_program->text().trimmed();
    const std::string id = isNew() ? RandomIdSource().next("sp") : m_id;
    QStringList seen{
        tr("%1, revision %2: %3")
            .arg(text(made.id), QString::number(made.revision), specificationText(made))};
    return Wanted{.acts = {{.act = SpecificationRecorded{made}, .subjects = {id}}},
                  .what = isNew() ? tr("Record the program %1").arg(program)
                                  : tr("Revise the program %1").arg(program),
                  .seen = seen + limitLines(made),
                  .done = tr("The program %1 is recorded. It holds for loads that start from now "
                             "on.")
                              .arg(program)};
}

} // namespace loadwarden::ui
