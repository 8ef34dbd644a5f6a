#include "ui/trace/trace_facts.h"

#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"
#include "ui/trace/trace_facts_list.h"

#include <QGridLayout>
#include <QVBoxLayout>

#include <algorithm>

namespace loadwarden::ui {
namespace {

constexpr std::size_t mostDefectsShown = 50;
constexpr int nameWidth = 220;
constexpr int answerWidth = 110;

const char* toneOf(Shown shown)
{
    switch (shown) {
    case Shown::notAsked: return "muted";
    case Shown::met: return "good";
    case Shown::open: return "waiting";
    case Shown::notMet: return "bad";
    }
    return "muted";
}

} // namespace

TraceFacts::TraceFacts(Look& look, QWidget* parent)
    : QWidget(parent), m_look(look), m_rows(new QVBoxLayout(this))
{
    m_rows->setContentsMargins(0, 0, 0, 0);
    m_rows->setSpacing(space::hair);
    setAccessibleName(tr("What the trace shows"));
}

void TraceFacts::show(const Trace& trace, const TraceEvaluation& evaluation,
                      const AskedOfTrace& asked, const std::vector<TraceDefect>& defects)
{
    clearLayout(m_rows);
    for (const TraceFactGroup& group : factsOf(trace, evaluation, asked)) {
        addGroup(group);
    }
    addDefects(defects);
    m_rows->addStretch();
}

void TraceFacts::addGroup(const TraceFactGroup& group)
{
    m_rows->addSpacing(m_rows->isEmpty() ? 0 : space::small);
    m_rows->addWidget(makeLabel(group.title, Type::heading));
    for (const TraceFact& fact : group.facts) {
        addFact(fact);
    }
    if (!group.note.isEmpty()) {
        m_rows->addWidget(makeMuted(group.note));
    }
}

void TraceFacts::addFact(const TraceFact& fact)
{
    auto* const row = new QGridLayout;
    row->setContentsMargins(0, 0, 0, 0);
    row->setHorizontalSpacing(space::medium);
    row->setVerticalSpacing(0);
    QLabel* const says = makeLabel(fact.says);
    if (fact.what.isEmpty()) {
        row->addWidget(says, 0, 0, 1, 3);
    } else {
        QLabel* const what = makeLabel(fact.what, Type::strong);
        what->setFixedWidth(nameWidth);
        what->setAlignment(Qt::AlignTop | Qt::AlignLeft);
        row->addWidget(what, 0, 0, 2, 1, Qt::AlignTop);
        row->addWidget(says, 0, 1);
    }
    if (fact.answer && *fact.answer != Shown::notAsked) {
        QLabel* const answer = makeLabel(text(say(*fact.answer)), Type::strong, false);
        answer->setProperty("tone", toneOf(*fact.answer));
        answer->setFixedWidth(answerWidth);
        row->addWidget(answer, 0, 2, Qt::AlignTop);
    }
    if (!fact.means.isEmpty()) {
        row->addWidget(makeMuted(fact.means), 1, 1, 1, 2);
    }
    row->setColumnStretch(1, 1);
    m_rows->addLayout(row);
}

void TraceFacts::addDefects(const std::vector<TraceDefect>& defects)
{
    if (defects.empty()) {
        return;
    }
    m_rows->addSpacing(space::small);
    m_rows->addWidget(makeLabel(tr("Defects of the recorder's text"), Type::heading));
    const std::size_t shown = std::min(defects.size(), mostDefectsShown);
    for (std::size_t i = 0; i < shown; ++i) {
        const TraceDefectSaid said = say(defects[i]);
        m_rows->addWidget(makeLabel(text(said.says)));
        m_rows->addWidget(makeMuted(text(said.next)));
    }
    if (shown < defects.size()) {
        m_rows->addWidget(
            makeMuted(tr("And %n more.", nullptr, static_cast<int>(defects.size() - shown))));
    }
}

} // namespace loadwarden::ui
