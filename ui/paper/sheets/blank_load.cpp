#include "ui/paper/sheets/blank_load.h"

#include "core/words/say_terms.h"
#include "ui/paper/kit/sheet.h"

#include <QStringList>

#include <array>

namespace loadwarden::paper {
namespace {

constexpr double line = millimetres(7.6);
constexpr double row = millimetres(7.6);

/// What is ticked by hand: an empty box before each word.
QString choices(const QString& words)
{
    QString ticked;
    for (const QString& word : words.split(u'|')) {
        ticked += (ticked.isEmpty() ? QString() : QStringLiteral("   ")) + QStringLiteral("\u25a1 ")
                  + word;
    }
    return ticked;
}

void emptyTable(Sheet& sheet, std::vector<Column> columns, std::size_t rows,
                const std::vector<std::vector<Runs>>& filled = {})
{
    Table table{.columns = std::move(columns), .rows = {}, .rules = Rules::boxes};
    for (const auto& cells : filled) {
        table.rows.push_back({.cells = cells, .beginsGroup = true, .least = row});
    }
    while (table.rows.size() < rows) {
        table.rows.push_back({.cells = {}, .beginsGroup = true, .least = row});
    }
    sheet.table(table);
}

} // namespace

Pages blankLoad(const House& house, const std::string& sterilizer)
{
    Sheet sheet(blankFrame(house, tr("Downtime sheet: load"),
                           sterilizer.empty() ? tr("Lot") + QStringLiteral(" ______________")
                                              : tr("%1, lot").arg(text(sterilizer))
                                                    + QStringLiteral(" ______________")),
                house.size);
    sheet.paragraph(
        plain(tr("Everybody writes what they did themselves, with name and time. What is not "
                 "written is not recorded: leave nothing to memory. Nothing of this load is used "
                 "before it is typed, decided and signed; an implant least of all.")));
    sheet.section(tr("1  Reserve"));
    sheet.writeLines({tr("Sterilizer"), tr("Program"), tr("Name"), tr("Date and time")}, 2, line);
    sheet.space(points(4));
    sheet.paragraph(plain(choices(tr("routine load|immediate use; then the reason and the case:"))),
                    Type::field);
    sheet.emptyLines(1, line);
    sheet.section(tr("2  Items"));
    emptyTable(sheet,
               {{tr("No."), 5},
                {tr("Label"), 26},
                {tr("Implant yes, no, ?"), 11},
                {tr("Packaging, use by"), 18},
                {tr("Outside indicator, lot"), 20},
                {tr("Inside indicators, lot, place"), 20}},
               7);
    sheet.section(tr("3  Process challenge device"));
    sheet.writeLines({tr("Mark"), tr("Chemical indicator, lot"), tr("Biological indicator, lot"),
                      tr("Placed by, time")},
                     2, line);
    sheet.section(tr("4  Start and end"));
    sheet.writeLines({tr("Started, time"), tr("Name"), tr("Cycle counter"),
                      tr("Whose clock (facility, sterilizer)"), tr("Ended, time"),
                      tr("Aborted? In which phase"), tr("Alarms, codes"), tr("Name")},
                     2, line);
    sheet.section(tr("5  Unload: look at every package"));
    emptyTable(sheet,
               {{tr("No."), 5},
                {tr("Cooled"), 10},
                {tr("Dry"), 8},
                {tr("Intact"), 9},
                {tr("Sealed"), 9},
                {tr("Label agrees"), 11},
                {tr("Outside indicator: what is seen"), 24},
                {tr("Name, time"), 24}},
               7);
    sheet.section(tr("6  Printout: keep it with this sheet"));
    sheet.writeLines({tr("Program"), tr("Sterilizer"), tr("Cycle counter"), tr("Start"), tr("End"),
                      tr("Name, time")},
                     2, line);
    sheet.space(points(4));
    std::vector<std::vector<Runs>> parameters;
    for (const Parameter parameter :
         {Parameter::temperature, Parameter::exposure, Parameter::pressure, Parameter::drying,
          Parameter::concentration, Parameter::humidity}) {
        parameters.push_back({plain(capital(text(say(parameter))))});
    }
    emptyTable(sheet,
               {{tr("Parameter"), 24},
                {tr("Reading, as printed"), 22},
                {tr("Unit"), 12},
                {tr("Name, time"), 42}},
               parameters.size(), parameters);
    sheet.writeLines({tr("Physical record verified by"), tr("Time")}, 2, line);
    sheet.section(tr("7  Chemical indicators"));
    emptyTable(sheet,
               {{tr("Which (item, PCD)"), 24},
                {tr("What is seen, in words"), 34},
                {tr("Unclear?"), 10},
                {tr("Name, time"), 32}},
               4);
    sheet.section(tr("8  Where it stands until it is decided"));
    sheet.writeLines({tr("Place"), tr("Hold sheet put on it by, time"), tr("Signature"),
                      tr("Typed into the journal by, time")},
                     2, line);
    return std::move(sheet).pages();
}

Pages blankBiologicals(const House& house)
{
    Sheet sheet(blankFrame(house, tr("Downtime sheet: biological indicators"),
                           tr("From") + QStringLiteral(" ____________ ") + tr("to")
                               + QStringLiteral(" ____________")),
                house.size);
    sheet.paragraph(
        plain(tr("One column for each indicator and each control, from top to bottom as it is "
                 "typed later. Every time with the name of who did it. The control must grow; "
                 "without it a vial counts for nothing. Growth in a vial that was in a load: hold "
                 "the load and the sterilizer at once, and tell a supervisor.")));
    sheet.space(points(6));
    const std::array fields = {
        tr("Lot of the load; \"control\" for a control"),
        tr("Mark of the process challenge device"),
        tr("Product"),
        tr("Lot of the product, use by"),
        tr("Activated: time"),
        tr("by"),
        tr("Incubator"),
        tr("Put in: time"),
        tr("by"),
        tr("Process indicator: changed, unchanged"),
        tr("by, time"),
        tr("May be read for release from (by the product's instructions)"),
        tr("Read: growth, no growth, unclear"),
        tr("time"),
        tr("by"),
        tr("Read again, if unclear: what, by whom, time"),
        tr("Typed into the journal: by, time"),
    };
    Table table{
        .columns = {{tr("Field"), 28}, {tr("1"), 18}, {tr("2"), 18}, {tr("3"), 18}, {tr("4"), 18}},
        .rows = {},
        .rules = Rules::boxes};
    for (const QString& field : fields) {
        table.rows.push_back({.cells = {plain(field), {}, {}, {}, {}},
                              .beginsGroup = true,
                              .least = millimetres(9.6)});
    }
    sheet.table(table);
    sheet.section(tr("Incubator out of range, or anything else"));
    sheet.emptyLines(2, line);
    return std::move(sheet).pages();
}

} // namespace loadwarden::paper
