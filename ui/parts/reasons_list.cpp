#include "ui/parts/reasons_list.h"

#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/glyph_view.h"

#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <utility>

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
    std::vector<Row> rows;
    for (const Finding& finding : findings) {
        Said said = say(finding, style);
        if (const std::string name = nameOfSubject ? nameOfSubject(finding) : std::string();
            !name.empty()) {
            for (std::string* const words : {&said.says, &said.next}) {
                *words = QString::fromStdString(*words)
                             .replace(text(finding.subject), text(name))
                             .toStdString();
            }
        }
        const QString item = nameOfItem ? nameOfItem(finding) : QString();
        rows.push_back(
            {.outcome = finding.outcome,
             .says = item.isEmpty()
                         ? text(said.says)
                         : tr("%1: %2", "an item, what was found of it").arg(item, text(said.says)),
             .next = text(said.next)});
    }
    m_hadFocus.clear();
    if (rows == m_shown) {
        return; // nothing moves
    }
    for (const auto* const button : findChildren<QPushButton*>()) {
        m_hadFocus = button->hasFocus() ? button->accessibleName() : m_hadFocus;
    }
    m_shown = std::move(rows);
    clearLayout(m_rows);
    for (std::size_t i = 0; i < m_shown.size(); ++i) {
        m_rows->addWidget(makeRow(m_shown[i], static_cast<int>(i)));
    }
}

QWidget* ReasonsList::makeRow(const Row& row, int index)
{
    const Mark mark = markOf(row.outcome);
    auto* const made = new QWidget;
    auto* const columns = new QHBoxLayout(made);
    columns->setContentsMargins(0, space::hair, 0, space::hair);
    columns->setSpacing(space::medium);
    columns->addWidget(new GlyphView(m_look, mark.glyph, mark.tone, 20), 0, Qt::AlignTop);
    auto* const words = new QVBoxLayout;
    words->setSpacing(space::hair);
    words->addWidget(makeLabel(row.says));
    if (!row.next.isEmpty()) {
        words->addWidget(makeMuted(row.next));
    }
    columns->addLayout(words, 1);
    auto* const links = new QHBoxLayout;
    links->setSpacing(space::small);
    auto* const go = makeButton(tr("Go there"), ButtonKind::quiet);
    go->setProperty("flush", true); // its words stand below the others
    go->setAccessibleName(tr("Go to what settles this: %1").arg(row.says));
    connect(go, &QPushButton::clicked, this, [this, index] { emit chosen(index); });
    links->addWidget(go);
    if (row.outcome == Outcome::review) {
        auto* const review = makeButton(tr("Review"), ButtonKind::quiet);
        review->setAccessibleName(tr("Review: %1").arg(row.says));
        connect(review, &QPushButton::clicked, this, [this, index] { emit reviewAsked(index); });
        links->addWidget(review);
    }
    links->addStretch();
    words->addLayout(links);
    return made;
}

void ReasonsList::focusAsBefore()
{
    if (m_hadFocus.isEmpty()) {
        return;
    }
    for (auto* const button : findChildren<QPushButton*>()) {
        if (!button->isHidden() && button->parentWidget() != nullptr
            && !button->parentWidget()->isHidden() && button->accessibleName() == m_hadFocus) {
            button->setFocus(Qt::OtherFocusReason);
            return;
        }
    }
}

} // namespace loadwarden::ui
