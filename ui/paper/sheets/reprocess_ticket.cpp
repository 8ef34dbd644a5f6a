#include "ui/paper/sheets/reprocess_ticket.h"

#include "core/words/say_terms.h"
#include "ui/paper/kit/sheet.h"
#include "ui/paper/kit/verdict_mark.h"
#include "ui/paper/sheets/load_parts.h"
#include "ui/paper/sheets/reasons.h"

#include <QStringList>

#include <algorithm>

namespace loadwarden::paper {
namespace {

/// What failed of an item or, with -1, of the load: each sentence once.
std::vector<Reason> failures(const CycleView& view, const HouseStyle& style, std::int32_t item)
{
    return reasonsOf(view, style, [item](const Finding& finding) {
        return finding.item == item && finding.outcome == Outcome::fails;
    });
}

QString says(const std::vector<Reason>& reasons)
{
    QStringList sentences;
    for (const Reason& reason : reasons) {
        sentences << text(reason.said.says);
    }
    sentences.removeDuplicates();
    return sentences.join(u'\n');
}

QString nexts(const std::vector<Reason>& reasons)
{
    QStringList sentences;
    for (const Reason& reason : reasons) {
        sentences << text(reason.said.next);
    }
    sentences.removeDuplicates();
    sentences.removeAll(QString());
    return sentences.join(u'\n');
}

QString packagingText(const Item& item, const Names& names)
{
    QStringList words;
    if (!item.packaging.empty()) {
        words << text(names.of(item.packaging));
    }
    for (const Device& device : item.devices) {
        words << text(device.name);
    }
    words << text(say(item.implant));
    return words.join(QStringLiteral(", "));
}

} // namespace

bool isToReprocess(const CycleRecord& record)
{
    return !record.view.isTest()
           && (standing(record) == Verdict::reprocess
               || std::ranges::count(itemsStanding(record), Verdict::reprocess) != 0);
}

Pages reprocessTicket(const CycleRecord& record, const House& house)
{
    const CycleView& view = record.view;
    Sheet sheet(frameOf(house, tr("Reprocess ticket"), lotText(view), view.now, record.head),
                house.size);
    const bool isWhole = standing(record) == Verdict::reprocess;
    sheet.statements(
        {{[](QPainter& painter, const QRectF& in) { paintMark(painter, Verdict::reprocess, in); },
          isWhole ? tr("Reprocess the whole load") : tr("Reprocess what is listed"),
          plain(tr("None of it may be used before it has been through a new load and that load is "
                   "released. Use new packaging and new indicators; what the instructions of "
                   "device and packaging ask for comes first."))}});
    appendCycle(sheet, record, house.style);

    const std::vector<Reason> ofLoad = failures(view, house.style, -1);
    if (!ofLoad.empty()) {
        sheet.section(tr("Of the whole load"));
        Table table{.columns = {{tr("What failed"), 50}, {tr("What is to be done"), 50}},
                    .rows = {}};
        for (const Reason& reason : ofLoad) {
            table.rows.push_back(
                {.cells = {plain(text(reason.said.says)), plain(text(reason.said.next))}});
        }
        sheet.table(table);
    }
    sheet.section(tr("Item by item"));
    Table table{.columns = {{tr("Label"), 20},
                            {tr("Why, and what is to be done"), 46},
                            {tr("Done by, time"), 18},
                            {tr("New lot"), 16}},
                .rows = {},
                .rules = Rules::boxes};
    const std::vector<Verdict> items = itemsStanding(record);
    for (std::size_t i = 0; i < items.size(); ++i) {
        if (items[i] != Verdict::reprocess) {
            continue;
        }
        const Item& item = view.folded.record.load.items[i];
        const std::vector<Reason> own = failures(view, house.style, static_cast<std::int32_t>(i));
        Runs what;
        if (own.empty()) {
            what = plain(isWhole ? tr("As the whole load: unpack, clean, pack anew.")
                                 : tr("Signed to be reprocessed: unpack, clean, pack anew."));
        } else {
            what = {{says(own) + u'\n', Face::plain}, {nexts(own), Face::strong}};
        }
        table.rows.push_back({.cells = {{{text(item.label) + u'\n', Face::strong},
                                         {packagingText(item, record.names), Face::plain}},
                                        what,
                                        Runs{},
                                        Runs{}},
                              .beginsGroup = true,
                              .least = millimetres(13)});
    }
    if (table.rows.empty()) {
        sheet.paragraph(plain(tr("No items are recorded in this load; reprocess all that was in "
                                 "it.")));
    } else {
        sheet.table(table);
    }
    sheet.space(points(6));
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
    sheet.writeLines({tr("Handed to, time"), tr("All done, name and time")}, 2, millimetres(11));
    return std::move(sheet).pages();
}

} // namespace loadwarden::paper
