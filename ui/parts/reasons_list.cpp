#include "ui/parts/reasons_list.h"

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

Mark markOf(Outcome outcome)
{
    switch (outcome) {
    case Outcome::note: return {Glyph::note, ToneOf::neutral};
    case Outcome::waits: return {Glyph::pending, ToneOf::waiting};
    case Outcome::review: return {Glyph::quarantine, ToneOf::waiting};
    case Outcome::fails: return {Glyph::reprocess, ToneOf::bad};
    }
    return {Glyph::note, ToneOf::neutral};
}

} // namespace

ReasonsList::ReasonsList(Look& look, QWidget* parent)
    : QWidget(parent), m_look(look), m_rows(new QVBoxLayout(this))
{
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setSpacing(space::small);
}

void ReasonsList::show(const std::vector<Finding>& findings, const HouseStyle& style)
{
    while (QLayoutItem* const item = m_rows->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    for (std::size_t i = 0; i < findings.size(); ++i) {
        const Said said = say(findings[i], style);
        const Mark mark = markOf(findings[i].outcome);
        auto* const row = new QWidget;
        auto* const columns = new QHBoxLayout(row);
        columns->setContentsMargins(0, space::hair, 0, space::hair);
        columns->setSpacing(space::medium);
        columns->addWidget(new GlyphView(m_look, mark.glyph, mark.tone, 20), 0, Qt::AlignTop);
        auto* const words = new QVBoxLayout;
        words->setSpacing(space::hair);
        words->addWidget(makeLabel(text(said.says)));
        if (!said.next.empty()) {
            words->addWidget(makeMuted(text(said.next)));
        }
        columns->addLayout(words, 1);
        auto* const go = makeButton(tr("Go there"), ButtonKind::quiet);
        go->setAccessibleName(tr("Go to what settles this: %1").arg(text(said.says)));
        connect(go, &QPushButton::clicked, this, [this, i] { emit chosen(static_cast<int>(i)); });
        columns->addWidget(go, 0, Qt::AlignTop);
        m_rows->addWidget(row);
    }
}

} // namespace loadwarden::ui
