#include "ui/trace/trace_sheet.h"

#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/paper/kit/sheet.h"
#include "ui/trace/trace_facts_list.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

struct SheetText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceSheet)
};

constexpr double pictureShare = 0.62; ///< of the width: its height
constexpr std::size_t mostDefects = 200;

/// What of the file is read, in words.
std::vector<paper::Named> sourceOf(const TraceOnPaper& of, const TraceReading& reading)
{
    std::vector<paper::Named> fields{
        {SheetText::tr("Sterilizer"), paper::plain(of.sterilizer)},
        {SheetText::tr("Recorder's file"), paper::plain(of.file)},
        {SheetText::tr("Cycle counter in the file"),
         paper::plain(reading.counter.empty() ? SheetText::tr("none") : text(reading.counter))},
        {SheetText::tr("To this load"),
         paper::plain(of.kept ? SheetText::tr("attached") : SheetText::tr("not attached"))}};
    QString samples = QString::number(reading.trace.samples());
    if (std::isfinite(reading.sampling.typical)) {
        samples = SheetText::tr("%1, %2 s apart, at most %3 s")
                      .arg(samples, text(sayNumber(reading.sampling.typical, 2)),
                           text(sayNumber(reading.sampling.largest, 2)));
    }
    fields.push_back({SheetText::tr("Samples"), paper::plain(samples)});
    return fields;
}

paper::Row rowOf(const TraceFact& fact)
{
    paper::Runs says = paper::plain(fact.says);
    if (!fact.means.isEmpty()) {
        says.push_back({u'\n' + fact.means, paper::Face::plain});
    }
    const bool isAsked = fact.answer && *fact.answer != Shown::notAsked;
    return {.cells = {paper::strong(fact.what), says,
                      paper::strong(isAsked ? text(say(*fact.answer)) : QString())}};
}

void addFigures(paper::Sheet& sheet, const TraceFactGroup& group)
{
    sheet.section(group.title);
    paper::Table table{.columns = {{{}, 3}, {{}, 8}, {{}, 2}}, .rows = {}};
    std::ranges::transform(group.facts, std::back_inserter(table.rows), rowOf);
    sheet.table(table);
    if (!group.note.isEmpty()) {
        sheet.paragraph(paper::plain(group.note));
    }
}

void addDefects(paper::Sheet& sheet, const std::vector<TraceDefect>& defects)
{
    if (defects.empty()) {
        return;
    }
    sheet.section(SheetText::tr("Defects of the recorder's text"));
    const std::size_t shown = std::min(defects.size(), mostDefects);
    for (std::size_t i = 0; i < shown; ++i) {
        const TraceDefectSaid said = say(defects[i]);
        sheet.paragraph(paper::plain(text(said.says) + u' ' + text(said.next)));
    }
    if (shown < defects.size()) {
        sheet.paragraph(paper::plain(
            SheetText::tr("And %n more.", nullptr, static_cast<int>(defects.size() - shown))));
    }
}

} // namespace

paper::Pages traceSheet(const TraceOnPaper& of, const TraceReading& reading,
                        const TraceEvaluation& evaluation, const AskedOfTrace& asked,
                        const paper::Frame& frame, paper::PageSize size)
{
    paper::Sheet sheet(frame, size);
    if (of.simulated) {
        sheet.paragraph(paper::strong(SheetText::tr(
            "SIMULATED: the first line of the file says so. It is the record of no sterilizer.")));
    }
    sheet.grid(sourceOf(of, reading), 2);
    sheet.picture(sheet.width() * pictureShare, of.picture);
    for (const TraceFactGroup& group : factsOf(reading.trace, evaluation, asked)) {
        addFigures(sheet, group);
    }
    addDefects(sheet, reading.defects);
    sheet.paragraph(paper::plain(SheetText::tr(
        "The temperature in the chamber is not the temperature inside a pack. What "
        "is computed here supports the decision and takes the place of no indicator.")));
    return std::move(sheet).pages();
}

} // namespace loadwarden::ui
