#include "ui/paper/sheets/day_sheet.h"

#include "core/words/say_terms.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/sheets/fact_line.h"
#include "ui/paper/sheets/load_parts.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {
namespace {

QString timesText(const CycleView& view, const HouseStyle& style)
{
    const EvidenceRecord& evidence = view.folded.record;
    const bool isTest = view.isTest();
    const bool started = view.folded.phase != Phase::beingLoaded;
    const auto start = isTest ? (started ? std::optional(evidence.test->start) : std::nullopt)
                              : evidence.load.start;
    const auto end = isTest ? evidence.test->end : evidence.load.end;
    const QString from = start ? clockText(*start, style) : tr("not started");
    const QString to = end ? clockText(*end, style) : started ? tr("not ended") : QString();
    const ClockSource clock = isTest ? evidence.test->clock : evidence.load.clock;
    const QString both = to.isEmpty() ? from : tr("%1 to %2").arg(from, to);
    return clock == ClockSource::sterilizer ? tr("%1 (its clock)").arg(both) : both;
}

QString purposeText(const CycleView& view)
{
    const EvidenceRecord& evidence = view.folded.record;
    QString words = view.isTest()            ? text(say(evidence.test->kind))
                    : evidence.specification ? text(say(evidence.specification->purpose))
                                             : tr("load");
    if (evidence.specification && !evidence.specification->program.empty()) {
        words += QStringLiteral(", ") + text(evidence.specification->program);
    }
    if (!view.isTest()) {
        const auto items = static_cast<int>(evidence.load.items.size());
        words += QStringLiteral(", ") + (items == 1 ? tr("1 item") : tr("%1 items").arg(items));
        if (std::ranges::any_of(evidence.load.items,
                                [](const Item& item) { return item.implant == Implant::yes; })) {
            words += QStringLiteral(", ") + tr("implant");
        }
    }
    return words;
}

QString resultText(const CycleView& view)
{
    const Phase phase = view.folded.phase;
    if (phase == Phase::beingLoaded) {
        return tr("being loaded");
    }
    if (phase == Phase::running) {
        return tr("running");
    }
    if (view.isTest()) {
        return capital(text(say(view.judgement.result)));
    }
    const auto worse = std::ranges::count_if(view.decision.items, [&](const ItemDecision& item) {
        return item.verdict > view.decision.verdict;
    });
    const QString verdict = capital(text(say(view.decision.verdict)));
    return worse == 0   ? verdict
           : worse == 1 ? tr("%1, but not 1 item").arg(verdict)
                        : tr("%1, but not %2 items").arg(verdict).arg(worse);
}

QString signedText(const LoggedCycle& cycle, const Names& names, const HouseStyle& style)
{
    const CycleView& view = cycle.view;
    if (view.isTest()) {
        return tr("a test is read, not signed");
    }
    if (!cycle.disposition) {
        return tr("not signed");
    }
    QString words = tr("%1 by %2")
                        .arg(text(say(std::get<DispositionSigned>(cycle.disposition->act).meaning)),
                             whoText(*cycle.disposition, names, style));
    if (view.folded.phase == Phase::evidenceChanged) {
        words += QStringLiteral("; ") + tr("evidence has changed since");
    }
    return capital(words);
}

} // namespace

Pages daySheet(const SterilizerLog& log, const House& house)
{
    const QString name = text(log.names.of(log.sterilizer));
    Sheet sheet(frameOf(house, tr("Day sheet of a sterilizer"),
                        tr("%1, %2").arg(name, text(formatDate(log.day))), log.now, log.head),
                house.size);
    sheet.grid({{tr("State"), plain(capital(text(say(log.service))))},
                {tr("Cycles"), plain(QString::number(log.cycles.size()))},
                {tr("Not signed"),
                 plain(QString::number(std::ranges::count_if(log.cycles,
                                                             [](const LoggedCycle& cycle) {
                                                                 return !cycle.view.isTest()
                                                                        && !cycle.disposition;
                                                             })))}},
               3);
    sheet.section(tr("Cycles"));
    if (log.cycles.empty()) {
        sheet.paragraph(plain(tr("No cycle of this day is recorded.")));
    } else {
        Table table{.columns = {{tr("Time"), 14},
                                {tr("Lot"), 15},
                                {tr("Counter"), 9},
                                {tr("Purpose"), 23},
                                {tr("Result"), 15},
                                {tr("Signed"), 28}},
                    .rows = {}};
        for (const LoggedCycle& cycle : log.cycles) {
            const EvidenceRecord& evidence = cycle.view.folded.record;
            const auto counter =
                cycle.view.isTest() ? evidence.test->counter : evidence.load.counter;
            table.rows.push_back(
                {.cells = {plain(timesText(cycle.view, house.style)), strong(lotText(cycle.view)),
                           plain(counter ? QString::number(*counter) : QStringLiteral("–")),
                           plain(purposeText(cycle.view)), strong(resultText(cycle.view)),
                           plain(signedText(cycle, log.names, house.style))}});
        }
        sheet.table(table);
    }
    sheet.section(tr("Recorded of the sterilizer itself"));
    const FactBook book(log.own);
    Table table{.columns = {{{}, 24}, {{}, 37}, {{}, 39}}, .rows = {}};
    for (const Fact& fact : book.facts()) {
        const FactLine line = lineOf(fact, log.names, house.style);
        table.rows.push_back({.cells = {line.what, line.value, line.who}});
    }
    if (table.rows.empty()) {
        sheet.paragraph(plain(tr("Nothing on this day.")));
    } else {
        sheet.table(table);
    }
    sheet.section(tr("Looked through"));
    sheet.writeLines({tr("Name and role"), tr("Date and time")}, 2, millimetres(10));
    sheet.emptyLines(2, millimetres(9));
    return std::move(sheet).pages();
}

} // namespace loadwarden::paper
