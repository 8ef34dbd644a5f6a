#include "ui/load/emergency_form.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"

#include <QComboBox>
#include <QGridLayout>
#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {

EmergencyForm::EmergencyForm(CycleDesk& desk, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_item(new QComboBox),
      m_case(new QLineEdit),
      m_demandedBy(new QLineEdit),
      m_why(new QLineEdit),
      m_prevented(new QLineEdit)
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->addWidget(makeLabel(tr("Emergency release of an implant"), Type::heading));
    column->addWidget(makeLabel(
        tr("Only where the case cannot wait for the biological indicator, and nothing else is "
           "missing. The implant stays traceable to this load and the indicator is still read.")));
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(0);
    m_fields = {new Field(tr("Which implant"), m_item),
                new Field(tr("Reference of the case"), m_case, tr("no patient's name")),
                new Field(tr("Demanded by"), m_demandedBy, tr("a role, as: surgeon")),
                new Field(tr("Why it cannot wait"), m_why),
                new Field(tr("What would have prevented it"), m_prevented)};
    grid->addWidget(m_fields[0], 0, 0);
    grid->addWidget(m_fields[1], 0, 1);
    grid->addWidget(m_fields[2], 1, 0);
    grid->addWidget(m_fields[3], 1, 1);
    grid->addWidget(m_fields[4], 2, 0, 1, 2);
    column->addLayout(grid);
    auto* const buttons = new FlowLayout;
    buttons->setSpacing(space::small);
    auto* const sign = makeButton(tr("Sign the emergency release"), ButtonKind::main);
    auto* const leave = makeButton(tr("Leave the emergency release"));
    buttons->addWidget(sign);
    buttons->addWidget(leave);
    column->addLayout(buttons);
    connect(sign, &QPushButton::clicked, this, &EmergencyForm::sign);
    connect(leave, &QPushButton::clicked, this, &QWidget::hide);
    hide();
}

void EmergencyForm::ask()
{
    const QString before = m_item->currentData().toString();
    m_item->clear();
    for (const SheetItem& item : m_desk.sheet()->items) {
        if (item.implant != Implant::no && item.verdict == Verdict::quarantine) {
            m_item->addItem(text(item.label), text(item.id));
        }
    }
    m_item->setCurrentIndex(std::max(0, m_item->findData(before)));
    show();
    m_item->setFocus(Qt::OtherFocusReason);
}

void EmergencyForm::sign()
{
    const QLineEdit* const lines[] = {m_case, m_demandedBy, m_why, m_prevented};
    QWidget* missing = nullptr;
    for (std::size_t i = 0; i < std::size(lines); ++i) {
        const bool isEmpty = lines[i]->text().trimmed().isEmpty();
        m_fields[i + 1]->setError(isEmpty ? tr("This is needed for the record.") : QString());
        missing = missing == nullptr && isEmpty ? m_fields[i + 1]->editor() : missing;
    }
    if (missing != nullptr) {
        missing->setFocus();
        return;
    }
    const auto typed = [](const QLineEdit* line) { return line->text().trimmed().toStdString(); };
    const Emergency emergency{.caseReference = typed(m_case),
                              .demandedBy = typed(m_demandedBy),
                              .why = typed(m_why),
                              .wouldHavePrevented = typed(m_prevented)};
    const std::string item = m_item->currentData().toString().toStdString();
    m_desk.signOnSight(
        tr("Emergency release of %1 from load %2").arg(m_item->currentText(), m_desk.lot()),
        {tr("Decided now: %1").arg(text(say(m_desk.sheet()->view().decision.verdict))),
         tr("Case: %1, demanded by: %2").arg(text(emergency.caseReference), text(emergency.demandedBy)),
         tr("Why: %1").arg(text(emergency.why)),
         tr("What would have prevented it: %1").arg(text(emergency.wouldHavePrevented))},
        tr("Sign the emergency release"),
        [item, emergency](Office& office, const SignedIn& who, Signature signature,
                          const Sight& sight) {
            return Dispositions(office).releaseInEmergency(who, std::move(signature), sight, item,
                                                           emergency);
        },
        tr("%1 is released in an emergency. The load stays as it is.").arg(m_item->currentText()),
        [this] {
            for (QLineEdit* const line : {m_case, m_demandedBy, m_why, m_prevented}) {
                line->clear();
            }
            hide();
        });
}

} // namespace loadwarden::ui
