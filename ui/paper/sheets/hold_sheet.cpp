#include "ui/paper/sheets/hold_sheet.h"

#include "core/words/say_terms.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/kit/verdict_mark.h"
#include "ui/paper/sheets/load_parts.h"

#include <algorithm>

namespace loadwarden::paper {

bool isHeld(const CycleRecord& record)
{
    return !record.view.isTest()
           && (standing(record) != Verdict::release
               || std::ranges::any_of(itemsStanding(record),
                                      [](Verdict verdict) { return verdict != Verdict::release; }));
}

Pages holdSheet(const CycleRecord& record, const House& house)
{
    const CycleView& view = record.view;
    Sheet sheet(frameOf(house, tr("Hold sheet"), lotText(view), view.now, record.head), house.size);
    const std::vector<Verdict> items = itemsStanding(record);
    const Verdict load = standing(record);
    Verdict worst = load;
    for (const Verdict verdict : items) {
        worst = std::max(worst, verdict);
    }
    const bool isWhole = load != Verdict::release;
    sheet.statements(
        {{[worst](QPainter& painter, const QRectF& in) { paintMark(painter, worst, in); },
          tr("Do not use"),
          {{(isWhole ? tr("Nothing of this load may be used before it is released.")
                     : tr("What is listed here may not be used. The rest of the load is not held "
                          "by this sheet."))
                + u' ',
            Face::strong},
           {tr("Only a signed release in the journal ends this hold, never this sheet."),
            Face::plain}}}},
        Type::shout);

    sheet.space(points(4));
    sheet.writeLines({tr("Stands at (place)"), tr("Put there by, time")}, 2, millimetres(11));
    appendCycle(sheet, record, house.style);

    sheet.section(tr("Held"));
    Table table{.columns = {{tr("There?"), 9},
                            {tr("Label"), 46},
                            {tr("Implant"), 20},
                            {tr("Stands as"), 25}},
                .rows = {},
                .type = Type::field,
                .rules = Rules::boxes};
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i] == Verdict::release) {
            continue;
        }
        const Item& item = view.folded.record.load.items[i];
        table.rows.push_back(
            {.cells = {Runs{}, strong(text(item.label)), plain(text(say(item.implant))),
                       plain(text(say(items[i])))}});
    }
    if (table.rows.empty()) {
        sheet.paragraph(plain(tr("No items are recorded in this load; hold all that was in it.")));
    } else {
        sheet.table(table);
    }
    appendReasons(sheet, view, house.style);
    if (view.decision.nextChangeAt) {
        constexpr std::int64_t minute = 60'000;
        const Instant upwards{(view.decision.nextChangeAt->ms + minute - 1) / minute * minute};
        sheet.space(points(4));
        sheet.paragraph(strong(tr("Time alone changes this on %1: look again then.")
                                   .arg(timeText(upwards, house.style))));
    }
    sheet.section(tr("Signature"));
    const Entry* const disposition = newestDisposition(record);
    if (disposition != nullptr) {
        const auto& act = std::get<DispositionSigned>(disposition->act);
        sheet.paragraph({{tr("Signed as %1").arg(text(say(act.meaning))), Face::strong},
                         {QStringLiteral(" ")
                              + tr("by %1.").arg(whoText(*disposition, record.names, house.style)),
                          Face::plain}});
    } else {
        sheet.paragraph(plain(tr("Nobody has signed what becomes of this load.")));
    }
    sheet.writeLines({tr("Taken away by"), tr("When"), tr("Because (released, reprocessed)"),
                      tr("New lot, if reprocessed")},
                     2, millimetres(11));
    return std::move(sheet).pages();
}

} // namespace loadwarden::paper
