#include "ui/paper/sheets/load_parts.h"

#include "core/words/say_any_act.h"
#include "core/words/say_terms.h"
#include "ui/paper/kit/verdict_mark.h"
#include "ui/paper/sheets/house.h"
#include "ui/paper/sheets/reasons.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {
namespace {

/// Items that are decided or signed worse than the load.
QString exceptText(const std::vector<std::pair<QString, Verdict>>& items, Verdict load)
{
    QStringList lines;
    for (const Verdict verdict : {Verdict::reprocess, Verdict::quarantine}) {
        QStringList labels;
        for (const auto& [label, of] : items) {
            if (of == verdict && of != load) {
                labels << label;
            }
        }
        if (!labels.isEmpty()) {
            lines << tr("But %1: %2.").arg(text(say(verdict)), labels.join(QStringLiteral("; ")));
        }
    }
    return lines.join(u'\n');
}

QString decidedText(const CycleView& view, const HouseStyle& style)
{
    QString says = tr("as the evidence stood on %1.").arg(timeText(view.now, style));
    if (view.isTest()) {
        return says;
    }
    std::vector<std::pair<QString, Verdict>> items;
    for (const ItemDecision& item : view.decision.items) {
        items.emplace_back(text(item.label), item.verdict);
    }
    if (const QString except = exceptText(items, view.decision.verdict); !except.isEmpty()) {
        says += u'\n' + except;
    }
    if (view.decision.nextChangeAt) {
        constexpr std::int64_t minute = 60'000;
        const Instant upwards{(view.decision.nextChangeAt->ms + minute - 1) / minute * minute};
        says += u'\n' + tr("Time alone changes this on %1.").arg(timeText(upwards, style));
    }
    return says;
}

QString signedText(const CycleRecord& record, const Entry& entry, const HouseStyle& style)
{
    const auto& act = std::get<DispositionSigned>(entry.act);
    QString says = tr("by %1.").arg(whoText(entry, record.names, style));
    std::vector<std::pair<QString, Verdict>> items;
    const FoldedEvidence& folded = record.view.folded;
    for (const SignedItem& item : act.items) {
        const auto at = std::ranges::find(folded.itemIds, item.item);
        const auto index = static_cast<std::size_t>(at - folded.itemIds.begin());
        items.emplace_back(
            text(at == folded.itemIds.end() ? item.item : folded.record.load.items[index].label),
            item.meaning);
    }
    if (const QString except = exceptText(items, act.meaning); !except.isEmpty()) {
        says += u'\n' + except;
    }
    if (record.view.folded.phase == Phase::evidenceChanged) {
        says += u'\n' + tr("Evidence has changed since.");
    }
    if (act.meaning < record.view.decision.verdict) {
        says += u'\n'
                + tr("It is decided worse now: find out where its items are, and have somebody "
                     "sign anew.");
    }
    return says;
}

QString settingsText(const CycleSpecification& specification, const HouseStyle& style)
{
    QStringList words;
    const ProgramSettings& settings = specification.settings;
    const bool inFahrenheit = style.fahrenheit && settings.inFahrenheit;
    if (const auto& warm = inFahrenheit ? settings.inFahrenheit : settings.temperature) {
        words << text(sayQuantity(*warm));
    }
    if (settings.exposureMs) {
        words
            << tr("exposure %1").arg(text(sayQuantity({Unit::minutes, *settings.exposureMs / 60})));
    }
    if (settings.dryingMs) {
        words << tr("drying %1").arg(text(sayQuantity({Unit::minutes, *settings.dryingMs / 60})));
    }
    return words.join(QStringLiteral(", "));
}

Named named(const QString& name, const QString& value)
{
    return {name, plain(value.isEmpty() ? tr("not recorded") : value)};
}

QString shownText(std::optional<Instant> at, ClockSource clock, const HouseStyle& style)
{
    if (!at) {
        return {};
    }
    const QString time = timeText(*at, style);
    return clock == ClockSource::sterilizer ? tr("%1 by the sterilizer's clock").arg(time) : time;
}

QString outcomeText(CycleOutcome outcome, std::optional<AbortPhase> phase)
{
    switch (outcome) {
    case CycleOutcome::unknown: return tr("not ended");
    case CycleOutcome::ended: return tr("ended");
    case CycleOutcome::aborted:
        return phase ? tr("aborted %1").arg(text(say(*phase))) : tr("aborted");
    }
    return {};
}

} // namespace

QString lotText(const CycleView& view)
{
    return text(view.lot().empty() ? view.id : view.lot());
}

const Entry* newestDisposition(const CycleRecord& record)
{
    const Entry* found = nullptr;
    for (const Entry& entry : record.entries) {
        if (std::holds_alternative<DispositionSigned>(entry.act) && entry.isAbout(record.view.id)) {
            found = &entry;
        }
    }
    return found;
}

Verdict standing(const CycleRecord& record)
{
    return std::max(record.view.decision.verdict, record.view.signedAs.value_or(Verdict::release));
}

std::vector<Verdict> itemsStanding(const CycleRecord& record)
{
    const Entry* const disposition = newestDisposition(record);
    std::vector<Verdict> standings;
    for (std::size_t i = 0; i < record.view.decision.items.size(); ++i) {
        Verdict verdict = std::max(record.view.decision.items[i].verdict, standing(record));
        if (disposition != nullptr) {
            for (const SignedItem& item : std::get<DispositionSigned>(disposition->act).items) {
                if (item.item == record.view.folded.itemIds[i]) {
                    verdict = std::max(verdict, item.meaning);
                }
            }
        }
        standings.push_back(verdict);
    }
    return standings;
}

void appendVerdicts(Sheet& sheet, const CycleRecord& record, const HouseStyle& style)
{
    const CycleView& view = record.view;
    if (view.isTest()) {
        sheet.statements(
            {{[result = view.judgement.result](QPainter& painter, const QRectF& in) {
                  paintMark(painter, result, in);
              },
              capital(text(say(view.judgement.result))), plain(decidedText(view, style))}});
        return;
    }
    std::vector<Statement> statements{
        {[verdict = view.decision.verdict](QPainter& painter, const QRectF& in) {
             paintMark(painter, verdict, in);
         },
         tr("Decided: %1").arg(text(say(view.decision.verdict))), plain(decidedText(view, style))}};
    if (const Entry* const entry = newestDisposition(record)) {
        const Verdict meaning = std::get<DispositionSigned>(entry->act).meaning;
        statements.push_back(
            {[meaning](QPainter& painter, const QRectF& in) { paintMark(painter, meaning, in); },
             tr("Signed: %1").arg(text(say(meaning))), plain(signedText(record, *entry, style))});
    } else {
        statements.push_back(
            {nullptr, tr("Not signed"), plain(tr("Nobody has signed what becomes of this load."))});
    }
    sheet.statements(statements);
}

void appendCycle(Sheet& sheet, const CycleRecord& record, const HouseStyle& style)
{
    const FoldedEvidence& folded = record.view.folded;
    const EvidenceRecord& evidence = folded.record;
    const bool isTest = record.view.isTest();
    const LoadRecord& load = evidence.load;
    const ClockSource clock = isTest ? evidence.test->clock : load.clock;
    const bool started = folded.phase != Phase::beingLoaded;
    const auto start =
        isTest ? (started ? std::optional(evidence.test->start) : std::nullopt) : load.start;
    const auto end = isTest ? evidence.test->end : load.end;
    const auto counter = isTest ? evidence.test->counter : load.counter;
    const std::string model = evidence.sterilizer ? evidence.sterilizer->model : std::string();
    const QString name = text(record.names.of(folded.sterilizer));
    std::vector<Named> fields{
        named(tr("Sterilizer"), model.empty() ? name : tr("%1, %2").arg(name, text(model))),
        named(tr("Cycle counter"), counter ? QString::number(*counter) : QString()),
        named(tr("Record"), text(record.view.id)),
        named(tr("Start"), shownText(start, clock, style)),
        named(tr("End"), shownText(end, clock, style)),
        named(tr("Outcome"), outcomeText(isTest ? evidence.test->outcome : load.outcome,
                                         isTest ? std::nullopt : load.abortPhase))};
    if (isTest) {
        fields.push_back(named(tr("Purpose"), text(say(evidence.test->kind))));
    } else {
        fields.push_back(named(tr("Operator"), text(record.names.of(load.operatedBy))));
    }
    if (evidence.specification) {
        const CycleSpecification& specification = *evidence.specification;
        if (!isTest) {
            fields.push_back(named(tr("Purpose"), text(say(specification.purpose))));
        }
        fields.push_back(named(tr("Program"), text(specification.program)));
        fields.push_back(
            named(tr("Specification"),
                  tr("%1, rev. %2").arg(text(specification.id)).arg(specification.revision)));
        QString method = text(say(specification.method));
        if (specification.airRemoval != AirRemoval::unknown) {
            method += QStringLiteral(", ") + text(say(specification.airRemoval));
        }
        fields.push_back(named(tr("Method"), method));
        fields.push_back(named(tr("Set to"), settingsText(specification, style)));
    }
    sheet.section(tr("Cycle"));
    sheet.grid(fields, 3);
}

void appendReasons(Sheet& sheet, const CycleView& view, const HouseStyle& style)
{
    sheet.section(tr("Why"));
    const std::vector<Reason> reasons = reasonsOf(view, style);
    if (reasons.empty()) {
        sheet.paragraph(plain(tr("Nothing speaks against it.")));
        return;
    }
    Table table{.columns = {{{}, 10}, {{}, 90}}, .rows = {}};
    for (const Reason& reason : reasons) {
        Runs says = plain(text(reason.said.says));
        if (!reason.said.next.empty() && reason.outcome != Outcome::note) {
            says.push_back({QStringLiteral(" ") + tr("Next: "), Face::strong});
            says.push_back({text(reason.said.next), Face::plain});
        }
        if (const QString items = itemsText(reason, view); !items.isEmpty()) {
            says.push_back({QStringLiteral(" ") + tr("Of: %1.").arg(items), Face::strong});
        }
        says.push_back({QStringLiteral(" [%1]").arg(text(textOf(reason.key))), Face::plain});
        table.rows.push_back({.cells = {strong(capital(text(say(reason.outcome)))), says}});
    }
    sheet.table(table);
}

} // namespace loadwarden::paper
