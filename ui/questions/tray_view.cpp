#include "ui/questions/tray_view.h"

#include "ui/look/text.h"
#include "ui/parts/verdict_badge.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

Glyph glyphOf(TrayAnswer answer)
{
    switch (answer) {
    case TrayAnswer::mayBeUsed: return Glyph::release;
    case TrayAnswer::askLead: return Glyph::quarantine;
    case TrayAnswer::mayNot: return Glyph::reprocess;
    }
    return Glyph::reprocess;
}

ToneOf toneOfAnswer(TrayAnswer answer)
{
    switch (answer) {
    case TrayAnswer::mayBeUsed: return ToneOf::good;
    case TrayAnswer::askLead: return ToneOf::waiting;
    case TrayAnswer::mayNot: return ToneOf::bad;
    }
    return ToneOf::bad;
}

} // namespace

TrayView::TrayView(Look& look, const TraySheet& tray, const HouseStyle& style, QWidget* parent)
    : QFrame(parent)
{
    setObjectName(QStringLiteral("panel"));
    const TraySaid said = say(tray, style);
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeMuted(tr("Label %1").arg(text(tray.label))));
    auto* const badge = new VerdictBadge(look, VerdictBadge::Size::page);
    badge->show(glyphOf(tray.answer()), toneOfAnswer(tray.answer()), text(said.answer));
    column->addWidget(badge);
    column->addWidget(makeLabel(text(said.why)));
    column->addWidget(makeLabel(tr("Now: %1").arg(text(said.next)), Type::strong));
    if (!said.checks.empty()) {
        column->addWidget(makeLabel(tr("Look at it before and on opening"), Type::heading));
        for (const std::string& check : said.checks) {
            column->addWidget(makeLabel(tr("• %1").arg(text(check))));
        }
    }
    auto* const open = makeButton(tr("Open the load %1").arg(text(tray.lot)));
    connect(open, &QPushButton::clicked, this, &TrayView::wantsLoad);
    column->addWidget(open, 0, Qt::AlignLeft);
}

} // namespace loadwarden::ui
