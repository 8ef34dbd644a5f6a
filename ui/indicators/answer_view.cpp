#include "ui/indicators/answer_view.h"

#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"
#include "ui/parts/verdict_badge.h"

#include <QPushButton>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

Glyph glyphOf(ChemicalState state)
{
    switch (state) {
    case ChemicalState::accepted: return Glyph::release;
    case ChemicalState::rejected: return Glyph::reprocess;
    case ChemicalState::unclear:
    case ChemicalState::invalid:
    case ChemicalState::unread: break;
    }
    return Glyph::quarantine;
}

ToneOf toneOfState(ChemicalState state)
{
    switch (state) {
    case ChemicalState::accepted: return ToneOf::good;
    case ChemicalState::rejected: return ToneOf::bad;
    case ChemicalState::unclear:
    case ChemicalState::invalid:
    case ChemicalState::unread: break;
    }
    return ToneOf::waiting;
}

} // namespace

AnswerView::AnswerView(Look& look, const QString& product, ChemicalState state,
                       const IndicatorSaid& said, QWidget* parent)
    : QFrame(parent), m_another(makeButton(tr("Read &another of this lot"), ButtonKind::main))
{
    setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeMuted(product));
    auto* const badge = new VerdictBadge(look, VerdictBadge::Size::page);
    badge->show(glyphOf(state), toneOfState(state), text(said.answer));
    column->addWidget(badge);
    column->addWidget(makeLabel(text(said.why)));
    column->addWidget(makeLabel(tr("Now: %1").arg(text(said.next)), Type::strong));
    if (!said.source.empty()) {
        column->addWidget(makeMuted(tr("Source: %1").arg(text(said.source))));
    }
    auto* const buttons = new FlowLayout;
    buttons->setSpacing(space::small);
    auto* const other = makeButton(tr("Another l&ot"));
    buttons->addWidget(m_another);
    buttons->addWidget(other);
    column->addLayout(buttons);
    connect(m_another, &QPushButton::clicked, this, &AnswerView::wantsAnother);
    connect(other, &QPushButton::clicked, this, &AnswerView::left);
}

void AnswerView::focusFirst()
{
    m_another->setFocus(Qt::OtherFocusReason);
}

} // namespace loadwarden::ui
