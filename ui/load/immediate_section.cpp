#include "ui/load/immediate_section.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"

#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {

ImmediateSection::ImmediateSection(CycleDesk& desk, QWidget* parent)
    : SheetSection(desk, tr("Immediate use"), parent),
      m_facts(new Facts),
      m_form(new QWidget),
      m_why(new QLineEdit),
      m_case(new QLineEdit),
      m_storage(new ChoiceRow(tr("Is anything of it meant for storage"),
                              {tr("For use at once"), tr("For storage")}, -1)),
      m_whyField(new Field(tr("Why it could not wait"), m_why)),
      m_caseField(new Field(tr("Reference of the case"), m_case, tr("no patient's name"))),
      m_storageField(new Field(tr("Storage"), m_storage))
{
    column()->addWidget(m_facts);
    auto* const grid = new QGridLayout(m_form);
    grid->setContentsMargins(0, 0, 0, 0);
    grid->setHorizontalSpacing(space::medium);
    grid->addWidget(m_whyField, 0, 0);
    grid->addWidget(m_caseField, 0, 1);
    grid->addWidget(m_storageField, 1, 0, 1, 2);
    auto* const button = makeButton(tr("Record it"));
    grid->addWidget(button, 2, 0, Qt::AlignLeft);
    connect(button, &QPushButton::clicked, this, &ImmediateSection::state);
    column()->addWidget(m_form);
}

void ImmediateSection::show(const LoadSheet& sheet)
{
    const auto& said = sheet.view().folded.record.load.immediateUse;
    setVisible(sheet.state.purpose == Purpose::immediateUse || said.has_value());
    m_facts->clear();
    if (said) {
        m_facts->add(tr("Why"), said->reason.empty() ? tr("not stated") : text(said->reason));
        m_facts->add(tr("Case"),
                     said->caseReference.empty() ? tr("not stated") : text(said->caseReference));
        m_facts->add(tr("For storage"), !said->forStorage  ? tr("not stated")
                                        : *said->forStorage ? tr("yes")
                                                            : tr("no"));
    }
    // What is recorded stands beside what is typed next.
    const auto recorded = [](const QString& value, const QString& otherwise) {
        return value.isEmpty() ? otherwise : tr("recorded: %1").arg(value);
    };
    m_whyField->setHint(recorded(said ? text(said->reason) : QString(), {}));
    m_caseField->setHint(
        recorded(said ? text(said->caseReference) : QString(), tr("no patient's name")));
    m_storageField->setHint(recorded(!said || !said->forStorage ? QString()
                                     : *said->forStorage        ? tr("yes")
                                                                : tr("no"),
                                     {}));
    setState(said ? QString() : tr("not stated yet"));
}

void ImmediateSection::state()
{
    ImmediateUseStated stated{.why = m_why->text().trimmed().toStdString(),
                              .caseReference = m_case->text().trimmed().toStdString(),
                              .forStorage = {}};
    if (m_storage->chosen() >= 0) {
        stated.forStorage = m_storage->chosen() == 1;
    }
    if (stated.why.empty() && stated.caseReference.empty() && !stated.forStorage) {
        m_whyField->setError(tr("Type why the items could not wait for a routine cycle."));
        m_why->setFocus();
        return;
    }
    desk().record(
        stated, {}, tr("The reason for immediate use is recorded."),
        [this] {
            m_why->clear();
            m_case->clear();
            m_storage->choose(-1);
            m_whyField->setError({});
        },
        [this](const QString& why) { m_whyField->setError(why); });
}

} // namespace loadwarden::ui
