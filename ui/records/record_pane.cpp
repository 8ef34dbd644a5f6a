#include "ui/records/record_pane.h"

#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/paper/sheets/fact_line.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/parts/clear_layout.h"
#include "ui/parts/verdict_badge.h"
#include "ui/shell/desk_link.h"

#include <QHBoxLayout>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

/// What people typed is escaped: it is never markup.
QString markup(const paper::Runs& runs, bool isStrong)
{
    QString html;
    for (const paper::Run& run : runs) {
        QString words = run.text.toHtmlEscaped().replace(u'\n', QStringLiteral("<br>"));
        if (run.face == paper::Face::struck) {
            words = QStringLiteral("<s>%1</s>").arg(words);
        }
        html += isStrong || run.face == paper::Face::strong ? QStringLiteral("<b>%1</b>").arg(words)
                                                            : words;
    }
    return html;
}

QLabel* richLabel(const QString& html, bool isMuted)
{
    QLabel* const label = isMuted ? makeMuted({}) : makeLabel({});
    label->setTextFormat(Qt::RichText);
    label->setText(html);
    return label;
}

QString phaseText(const CycleView& view)
{
    switch (view.folded.phase) {
    case Phase::beingLoaded: return RecordPane::tr("Being loaded.");
    case Phase::running: return RecordPane::tr("Running.");
    case Phase::awaitingDecision:
        return view.isTest() ? QString() : RecordPane::tr("Decided so now, not signed.");
    case Phase::imported:
        return RecordPane::tr("Imported from an older record: nothing is decided here.");
    case Phase::evidenceChanged:
        return RecordPane::tr("Its evidence has changed since: somebody has to sign again.");
    case Phase::disposed: break;
    }
    return {};
}

} // namespace

RecordPane::RecordPane(Workstation& workstation, QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_lot(makeLabel({}, Type::heading)),
      m_badge(new VerdictBadge(workstation.look, VerdictBadge::Size::row)),
      m_state(makeMuted({})),
      m_open(makeButton(tr("&Open"))),
      m_paper(makeButton(tr("Pri&nt or save"))),
      m_rule(makeRule()),
      m_scroll(new QScrollArea),
      m_rows(nullptr)
{
    setObjectName(QStringLiteral("panel"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::hair, space::hair);
    column->setSpacing(space::small);
    auto* const head = new QVBoxLayout;
    head->setContentsMargins(0, 0, space::medium, 0);
    head->setSpacing(space::hair);
    head->addWidget(m_lot);
    head->addWidget(m_badge);
    head->addWidget(m_state);
    auto* const buttons = new QHBoxLayout;
    buttons->setSpacing(space::small);
    buttons->addWidget(m_open);
    buttons->addWidget(m_paper);
    buttons->addStretch();
    head->addLayout(buttons);
    column->addLayout(head);
    column->addWidget(m_rule);
    m_scroll->setWidgetResizable(true);
    m_scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setObjectName(QStringLiteral("history"));
    auto* const rows = new QWidget;
    rows->setObjectName(QStringLiteral("rows"));
    m_rows = new QVBoxLayout(rows);
    m_rows->setContentsMargins(0, 0, space::medium, space::small);
    m_rows->setSpacing(space::small);
    m_scroll->setWidget(rows);
    column->addWidget(m_scroll, 1);
    column->addStretch(); // where there is no history
    connect(m_open, &QPushButton::clicked, this, &RecordPane::wantsOpen);
    connect(m_paper, &QPushButton::clicked, this, &RecordPane::wantsPaper);
    clear();
}

void RecordPane::clear()
{
    m_record.reset();
    clearLayout(m_rows);
    m_lot->setText(tr("Nothing is chosen"));
    m_state->setText(tr("Choose a load or a test: its history stands here, with everything that "
                        "was corrected."));
    m_state->show();
    for (QWidget* const each : {static_cast<QWidget*>(m_badge), static_cast<QWidget*>(m_open),
                                static_cast<QWidget*>(m_paper), static_cast<QWidget*>(m_scroll)}) {
        each->hide();
    }
    m_rule->hide();
}

void RecordPane::wait(const QString& lot)
{
    m_record.reset();
    clearLayout(m_rows);
    m_lot->setText(lot);
    m_badge->hide();
    m_state->setText(tr("Its history is being read."));
    m_state->show();
    m_open->hide();
    m_paper->hide();
    m_scroll->hide();
    m_rule->hide();
}

void RecordPane::show(std::shared_ptr<const CycleRecord> record)
{
    m_record = std::move(record);
    clearLayout(m_rows);
    const QString lot = paper::lotText(m_record->view);
    m_lot->setText(lot);
    showState();
    m_open->show();
    m_open->setAccessibleName(tr("Open %1").arg(lot));
    m_paper->show();
    m_paper->setAccessibleName(tr("Print or save the record of %1").arg(lot));
    const FactBook book(m_record->entries);
    for (const Fact& fact : book.facts()) {
        addFact(fact);
    }
    m_rows->addStretch();
    m_scroll->setAccessibleName(tr("History of %1").arg(lot));
    m_scroll->setFocusPolicy(Qt::StrongFocus);
    m_rule->show();
    m_scroll->show();
    m_scroll->verticalScrollBar()->setValue(0);
}

void RecordPane::showState()
{
    const CycleView& view = m_record->view;
    const Phase phase = view.folded.phase;
    const bool hasAnswer =
        phase != Phase::imported && phase != Phase::beingLoaded && phase != Phase::running;
    m_badge->setVisible(hasAnswer);
    if (view.isTest()) {
        m_badge->show(view.judgement.result);
    } else {
        m_badge->show(view.signedAs.value_or(view.decision.verdict));
    }
    QString says;
    if (const Entry* const entry = paper::newestDisposition(*m_record)) {
        says = tr("Signed by %1.")
                   .arg(paper::whoText(*entry, m_record->names, m_workstation.desk.style()));
    }
    if (const QString state = phaseText(view); !state.isEmpty()) {
        says += (says.isEmpty() ? QString() : QStringLiteral(" ")) + state;
    }
    m_state->setText(says);
    m_state->setVisible(!says.isEmpty());
}

void RecordPane::addFact(const Fact& fact)
{
    const paper::FactLine line = paper::lineOf(fact, m_record->names, m_workstation.desk.style());
    auto* const both = new QWidget;
    auto* const column = new QVBoxLayout(both);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    const QString value = markup(line.value, false);
    column->addWidget(richLabel(value.isEmpty()
                                    ? markup(line.what, true)
                                    : markup(line.what, true) + QStringLiteral(": ") + value,
                                false));
    column->addWidget(richLabel(markup(line.who, false), true));
    m_rows->addWidget(both);
}

} // namespace loadwarden::ui
