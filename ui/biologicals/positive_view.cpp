#include "ui/biologicals/positive_view.h"

#include "core/words/say_positive.h"
#include "ui/look/text.h"
#include "ui/parts/glyph_view.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostHeld = 12; ///< what is named one by one

QVBoxLayout* addColumn(QHBoxLayout* row, const QString& heading, int stretch)
{
    auto* const column = new QVBoxLayout;
    column->setSpacing(space::hair);
    column->addWidget(makeLabel(heading, Type::strong));
    row->addLayout(column, stretch);
    return column;
}

void addLines(QVBoxLayout* column, const std::vector<std::string>& lines, bool isNumbered)
{
    int number = 1;
    for (const std::string& line : lines) {
        column->addWidget(makeLabel(
            isNumbered ? QStringLiteral("%1. %2").arg(number++).arg(text(line)) : text(line)));
    }
    column->addStretch();
}

} // namespace

PositiveView::PositiveView(Look& look, const BiPositive& positive, const HouseStyle& style,
                           QWidget* parent)
    : QFrame(parent)
{
    setObjectName(QStringLiteral("banner"));
    setProperty("tone", "bad");
    const PositiveSaid said = say(positive, style);
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::large, space::medium, space::page, space::medium);
    column->setSpacing(space::small);
    auto* const head = new QHBoxLayout;
    head->setSpacing(space::medium);
    head->addWidget(new GlyphView(look, Glyph::reprocess, ToneOf::bad, 34), 0, Qt::AlignTop);
    auto* const words = new QVBoxLayout;
    words->setSpacing(2);
    words->addWidget(makeLabel(text(said.what), Type::heading));
    words->addWidget(makeLabel(text(said.says)));
    head->addLayout(words, 1);
    auto* const open = makeButton(tr("Open the load"), ButtonKind::main);
    open->setAccessibleName(tr("Open the load %1").arg(text(positive.lot)));
    connect(open, &QPushButton::clicked, this,
            [this, cycle = text(positive.cycle)] { emit wantsCycle(cycle); });
    head->addWidget(open, 0, Qt::AlignTop);
    column->addLayout(head);
    auto* const row = new QHBoxLayout;
    row->setSpacing(space::page);
    column->addLayout(row);
    addLines(addColumn(row, tr("Tell"), 3), said.tell, false);

    auto* const held = addColumn(row, tr("In question: %1 loads").arg(positive.held.size()), 4);
    held->addWidget(
        makeLabel(positive.lastNegativeLot
                      ? tr("Of this sterilizer since its last negative BI, load %1.")
                            .arg(text(*positive.lastNegativeLot))
                      : tr("Of this sterilizer; no negative BI was found in the 35 days before.")));
    for (std::size_t i = 0; i < std::min(positive.held.size(), mostHeld); ++i) {
        const BiHeld& load = positive.held[i];
        QString line =
            tr("%1, %2", "a load, what was signed")
                .arg(text(load.lot), load.signedAs ? tr("signed: %1").arg(text(say(*load.signedAs)))
                                                   : tr("not signed, hold it"));
        if (load.hasImplant) {
            line = tr("%1, implant").arg(line);
        }
        if (load.isPositive) {
            line = tr("%1, the positive").arg(line);
        }
        auto* const label =
            makeLabel(line, load.signedAs == Verdict::release ? Type::strong : Type::body);
        held->addWidget(label);
    }
    if (positive.held.size() > mostHeld) {
        held->addWidget(makeLabel(tr("And %1 more: find them in Records by sterilizer and date.")
                                      .arg(positive.held.size() - mostHeld)));
    }
    held->addStretch();
    addLines(addColumn(row, tr("Next"), 5), said.next, true);
}

} // namespace loadwarden::ui
