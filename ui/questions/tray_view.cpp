#include "ui/questions/tray_view.h"

#include "ui/look/text.h"
#include "ui/parts/flow_layout.h"
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
    : QFrame(parent), m_column(new QVBoxLayout(this))
{
    show(look, text(tray.label), tray.answer(), say(tray, style));
    auto* const open = makeButton(tr("Open the load %1").arg(text(tray.lot)));
    connect(open, &QPushButton::clicked, this, &TrayView::wantsLoad);
    auto* const buttons = new FlowLayout;
    buttons->setSpacing(space::small);
    buttons->addWidget(open);
    if (tray.ended && tray.stand != TrayStand::imported && tray.stand != TrayStand::inTest
        && tray.stand != TrayStand::leftLoad) {
        auto* const report = makeButton(tr("Re&port what was found on opening…"));
        connect(report, &QPushButton::clicked, this, &TrayView::wantsReport);
        buttons->addWidget(report);
    }
    m_column->addLayout(buttons);
}

TrayView::TrayView(Look& look, const QString& label, QWidget* parent)
    : QFrame(parent), m_column(new QVBoxLayout(this))
{
    show(look, label, TrayAnswer::mayNot, sayUnknownTray());
}

void TrayView::show(Look& look, const QString& label, TrayAnswer answer, const TraySaid& said)
{
    setObjectName(QStringLiteral("panel"));
    m_column->setContentsMargins(space::large, space::medium, space::large, space::medium);
    m_column->setSpacing(space::small);
    m_column->addWidget(makeMuted(tr("Label %1").arg(label)));
    auto* const badge = new VerdictBadge(look, VerdictBadge::Size::page);
    badge->show(glyphOf(answer), toneOfAnswer(answer), text(said.answer));
    m_column->addWidget(badge);
    m_column->addWidget(makeLabel(text(said.why)));
    m_column->addWidget(makeLabel(tr("Now: %1").arg(text(said.next)), Type::strong));
    if (!said.checks.empty()) {
        m_column->addWidget(makeLabel(tr("Look at it before and on opening"), Type::heading));
        for (const std::string& check : said.checks) {
            m_column->addWidget(makeLabel(tr("• %1").arg(text(check))));
        }
    }
}

} // namespace loadwarden::ui
