#include "ui/load/review_form.h"

#include "ui/look/text.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"

#include <QLineEdit>
#include <QVBoxLayout>

namespace loadwarden::ui {

ReviewForm::ReviewForm(CycleDesk& desk, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_asks(makeLabel({}, Type::strong)),
      m_answer(new ChoiceRow(tr("Answer"), {tr("Isolated"), tr("Not isolated")}, -1)),
      m_why(new QLineEdit),
      m_field(new Field(tr("Why"), m_why))
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    column->addWidget(m_asks);
    column->addWidget(makeMuted(
        tr("Isolated: it concerns this alone, and the rest of the evidence is good. Not isolated: "
           "the load is treated as failed.")));
    column->addWidget(m_answer);
    column->addWidget(m_field);
    auto* const buttons = new FlowLayout; // in a narrow column
    buttons->setSpacing(space::small);
    auto* const sign = makeButton(tr("Sign the review"), ButtonKind::main);
    auto* const leave = makeButton(tr("Leave the review"));
    buttons->addWidget(sign);
    buttons->addWidget(leave);
    column->addLayout(buttons);
    connect(sign, &QPushButton::clicked, this, &ReviewForm::sign);
    connect(leave, &QPushButton::clicked, this, &ReviewForm::leave);
    connect(&desk, &CycleDesk::changed, this, &ReviewForm::lookAgain);
    hide();
}

void ReviewForm::ask(const Finding& finding)
{
    const bool isSame = finding.key == m_finding.key && finding.subject == m_finding.subject;
    m_finding = finding;
    m_asks->setText(tr("Review: %1").arg(text(say(finding, m_desk.style()).says)));
    if (!isSame) {
        m_why->clear();
        m_answer->choose(-1);
    }
    m_field->setError({});
    show();
    m_answer->setFocus(Qt::OtherFocusReason);
}

void ReviewForm::lookAgain()
{
    if (isHidden()) {
        return;
    }
    // What is answered is what is decided now.
    for (const Finding& finding : m_desk.sheet()->view().decision.findings) {
        if (finding.key == m_finding.key && finding.subject == m_finding.subject
            && finding.outcome == Outcome::review) {
            m_finding = finding;
            m_asks->setText(tr("Review: %1").arg(text(say(finding, m_desk.style()).says)));
            return;
        }
    }
    leave();
    emit m_desk.says(tr("What was to be reviewed is no longer found."), {});
}

void ReviewForm::sign()
{
    const QString why = m_why->text().trimmed();
    if (m_answer->chosen() < 0 || why.isEmpty()) {
        m_field->setError(m_answer->chosen() < 0 ? tr("Choose whether it is isolated.")
                                                 : tr("Type why."));
        (m_answer->chosen() < 0 ? static_cast<QWidget*>(m_answer) : m_why)->setFocus();
        return;
    }
    const ReviewAsked asked{.finding = std::string(textOf(m_finding.key)),
                            .subject = m_finding.subject,
                            .answer = m_answer->chosen() == 0 ? ReviewAnswer::isolated
                                                              : ReviewAnswer::notIsolated,
                            .why = why.toStdString()};
    m_desk.signOnSight(
        m_answer->chosen() == 0 ? tr("On %1: this is isolated").arg(m_desk.lot())
                                : tr("On %1: this is not isolated").arg(m_desk.lot()),
        {text(say(m_finding, m_desk.style()).says), tr("Why: %1").arg(why)}, tr("Sign the review"),
        [asked](Office& office, const SignedIn& who, Signature signature, const Sight& sight) {
            return Dispositions(office).review(who, std::move(signature), sight, asked);
        },
        tr("The review is signed."), [this] {
            leave();
            m_why->clear();
            m_answer->choose(-1);
        });
}

void ReviewForm::leave()
{
    hide();
}

} // namespace loadwarden::ui
