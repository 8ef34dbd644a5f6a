#include "ui/settings/packaging_form.h"

#include "core/packaging/packaging_words.h"
#include "ui/parts/field.h"
#include "ui/settings/methods_edit.h"
#include "ui/settings/number_edit.h"
#include "ui/settings/word_list.h"

#include <QLineEdit>

#include <algorithm>
#include <utility>

namespace loadwarden::ui {

PackagingForm::PackagingForm(const Workstation& workstation, std::string id)
    : RegisterForm(workstation, Task::PackagingRecorded,
                   tr("A lead or a supervisor records packagings.")),
      m_id(std::move(id)),
      m_name(new QLineEdit),
      m_form(makeWordList(packageFormWords)),
      m_methods(new MethodsEdit),
      m_aeration(new NumberEdit(tr("min"))),
      m_nameField(nullptr),
      m_methodsField(nullptr),
      m_aerationField(nullptr)
{
    beginGroup(isNew() ? tr("New packaging") : tr("What its instructions for use say"),
               tr("Type what the instructions for use (IFU) of the packaging say, not what is "
                  "usual: loads are judged by it."));
    m_nameField = addField("name", tr("&Name"), m_name, tr("As your department calls it."));
    addField("form", tr("Form"), m_form);
    m_methodsField = addField("methods", tr("Made for"), m_methods);
    spanLast();
    m_aerationField = addField("aerationMinutes", tr("Aeration that they ask for"), m_aeration,
                               tr("Empty: not stated."));
    addButtons(isNew() ? tr("Record the packaging") : tr("Record the revision"));
    setFocusProxy(m_name);
    putBack();
}

void PackagingForm::show(const Registers& registers)
{
    const auto found = std::ranges::find(registers.packagings, m_id, &RegisteredPackaging::id);
    if (found != registers.packagings.end() && !isTouched()) {
        m_recorded = found->recorded;
        putBack();
    }
}

void PackagingForm::putBack()
{
    m_name->setText(text(m_recorded.name));
    choose(m_form, m_recorded.packaging.form);
    m_methods->set(m_recorded.packaging.methods);
    m_aeration->setWhole(m_recorded.packaging.aerationMinutes);
    filled();
}

std::optional<Wanted> PackagingForm::wanted()
{
    const bool isNamed = needs(m_nameField, tr("Type its name."));
    const QString wrongMethods = m_methods->whatIsWrong();
    setError(m_methodsField, wrongMethods);
    setError(m_aerationField, m_aeration->isGood() ? QString() : tr("Type whole minutes."));
    if (!isNamed || !wrongMethods.isEmpty() || !m_aeration->isGood()) {
        return std::nullopt;
    }
    const QString name = m_name->text().trimmed();
    const Packaging packaging{.id = {},
                              .form = chosenIn<PackageForm>(m_form),
                              .methods = m_methods->value(),
                              .aerationMinutes = m_aeration->whole()};
    return Wanted{.acts = {{.act = PackagingRecorded{name.toStdString(), packaging},
                            .subjects = {isNew() ? RandomIdSource().next("pk") : m_id}}},
                  .what = {},
                  .seen = {},
                  .done = tr("The packaging %1 is recorded.").arg(name)};
}

} // namespace loadwarden::ui
