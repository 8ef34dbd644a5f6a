#include "ui/today/need_row.h"

#include "ui/look/text.h"
#include "ui/parts/glyph_view.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

struct Mark {
    Glyph glyph;
    ToneOf tone;
};

Mark markOf(NeedKind kind)
{
    switch (kind) {
    case NeedKind::growth:
    case NeedKind::evidenceWorse:
    case NeedKind::lotRecalled:
    case NeedKind::failed: return {Glyph::reprocess, ToneOf::bad};
    case NeedKind::testFailed:
    case NeedKind::controlDead: return {Glyph::failed, ToneOf::bad};
    case NeedKind::testNotRun:
    case NeedKind::testNotRead:
    case NeedKind::biologicalDue:
    case NeedKind::printout:
    case NeedKind::reading:
    case NeedKind::otherEvidence: return {Glyph::pending, ToneOf::waiting};
    case NeedKind::evidenceChanged:
    case NeedKind::review: return {Glyph::quarantine, ToneOf::waiting};
    case NeedKind::signature: return {Glyph::release, ToneOf::good};
    case NeedKind::biologicalComing:
    case NeedKind::aerating: return {Glyph::running, ToneOf::neutral};
    case NeedKind::lotExpires: return {Glyph::note, ToneOf::neutral};
    }
    return {Glyph::note, ToneOf::neutral};
}

constexpr int widthOfAbout = 230;
constexpr int widthOfAction = 190;

} // namespace

NeedRow::NeedRow(Look& look, const Need& need, const QString& sterilizer, const HouseStyle& style,
                 QWidget* parent)
    : QFrame(parent),
      m_about(QStringLiteral("%1 %2 %3")
                  .arg(static_cast<int>(need.kind))
                  .arg(text(need.cycle), text(need.subject))),
      m_action(makeButton({}))
{
    setObjectName(QStringLiteral("need"));
    const NeedSaid said = say(need, style);
    const Mark mark = markOf(need.kind);
    auto* const row = new QHBoxLayout(this);
    row->setContentsMargins(space::page, space::small, space::page, space::small);
    row->setSpacing(space::medium);
    row->addWidget(new GlyphView(look, mark.glyph, mark.tone, 26), 0, Qt::AlignVCenter);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addStretch();
    words->addWidget(makeLabel(text(said.what), Type::strong));
    words->addWidget(makeMuted(text(said.says)));
    words->addStretch();
    row->addLayout(words, 1);
    auto* const about = new QWidget;
    about->setFixedWidth(widthOfAbout);
    auto* const lines = new QVBoxLayout(about);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(2);
    lines->addStretch();
    if (!need.lot.empty()) {
        lines->addWidget(makeLabel(text(need.lot), Type::strong));
    }
    if (!sterilizer.isEmpty()) {
        lines->addWidget(
            makeMuted(need.hasImplant ? tr("%1, implant").arg(sterilizer) : sterilizer));
    }
    lines->addStretch();
    row->addWidget(about);
    m_action->setText(text(said.action));
    m_action->setMinimumWidth(widthOfAction);
    m_action->setAccessibleName(tr("%1: %2 %3", "action, what, about what")
                                    .arg(text(said.action), text(said.what),
                                         text(need.lot.empty() ? need.name : need.lot)));
    m_action->setAccessibleDescription(text(said.says));
    connect(m_action, &QPushButton::clicked, this, &NeedRow::acted);
    row->addWidget(m_action, 0, Qt::AlignVCenter);
}

void NeedRow::setFirst()
{
    setStyleProperty(m_action, "kind", "main");
}

} // namespace loadwarden::ui
