#include "ui/parts/reasons_list.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
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

void ReasonsList::show(const std::vector<Finding>& findings, const HouseStyle& style,
                       const std::function<QString(const Finding&)>& nameOfItem,
                       const std::function<std::string(const Finding&)>& nameOfSubject)
{
    clearLayout(m_rows);
    for (std::size_t i = 0; i < findings.size(); ++i) {
        Said said = say(findings[i], style);
        if (const std::string name = nameOfSubject ? nameOfSubject(findings[i]) : std::string();
            !name.empty()) {
            for (std::string* const words : {&said.says, &said.next}) {
                *words = QString::fromStdString(*words)
                             .replace(text(findings[i].subject), text(name))
                             .toStdString();
            }
        }
        const Mark mark = markOf(findings[i].outcome);
        auto* const row = new QWidget;
        auto* const columns = new QHBoxLayout(row);
        columns->setContentsMargins(0, space::hair, 0, space::hair);
        columns->setSpacing(space::medium);
        columns->addWidget(new GlyphView(m_look, mark.glyph, mark.tone, 20), 0, Qt::AlignTop);
        auto* const words = new QVBoxLayout;
        words->setSpacing(space::hair);
        const QString item = nameOfItem ? nameOfItem(findings[i]) : QString();
        const QString says =
            item.isEmpty() ? text(said.says)
                           : tr("%1: %2", "an item, what was found of it").arg(item, text(said.says));
        words->addWidget(makeLabel(says));
        if (!said.next.empty()) {
            words->addWidget(makeMuted(text(said.next)));
        }
        columns->addLayout(words, 1);
        auto* const links = new QHBoxLayout;
        links->setSpacing(space::small);
        auto* const go = makeButton(tr("Go there"), ButtonKind::quiet);
        go->setProperty("flush", true); // its words stand below the others
        go->setAccessibleName(tr("Go to what settles this: %1").arg(says));
        connect(go, &QPushButton::clicked, this, [this, i] { emit chosen(static_cast<int>(i)); });
        links->addWidget(go);
        if (findings[i].outcome == Outcome::review) {
            auto* const review = makeButton(tr("Review"), ButtonKind::quiet);
            review->setAccessibleName(tr("Review: %1").arg(says));
            connect(review, &QPushButton::clicked, this,
                    [this, i] { emit reviewAsked(static_cast<int>(i)); });
            links->addWidget(review);
        }
        links->addStretch();
        words->addLayout(links);
        m_rows->addWidget(row);
    }
}

} // namespace loadwarden::ui
