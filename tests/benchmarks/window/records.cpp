#include "tests/benchmarks/window/figures.h"
#include "tests/benchmarks/window/measures.h"
#include "ui/records/records_model.h"
#include "ui/records/records_page.h"

#include <QScrollBar>
#include <QTableView>

namespace loadwarden::benchmarks {
namespace {

constexpr int timesShown = 7;
constexpr int steps = 300;

/// Every row that is seen is there, and not only its place.
bool isFilled(const QTableView& table)
{
    const auto* const model = static_cast<const ui::RecordsModel*>(table.model());
    const int first = table.rowAt(0);
    const int last = table.rowAt(table.viewport()->height() - 1);
    bool isThere = model->rowCount() > 0;
    for (int row = first; row <= (last < 0 ? model->rowCount() - 1 : last); ++row) {
        isThere = isThere && model->at(row) != nullptr;
    }
    return isThere;
}

struct Steps {
    std::vector<Taken> painted; ///< whatever stands in the rows
    std::vector<Taken> filled;
};

void scroll(BenchDesktop& desktop, QTableView& table, Qt::Key key, Steps& into)
{
    const QScrollBar& bar = *table.verticalScrollBar();
    const bool isDown = key == Qt::Key_PageDown;
    for (int i = 0; i < steps && bar.value() != (isDown ? bar.maximum() : bar.minimum()); ++i) {
        const Moment begun = Moment::now();
        desktop.press(key);
        // A key is handled when this comes back; what it changed is painted at the next turn.
        std::optional<Moment> seen;
        const Moment filled = desktop.application().painted([&] {
            if (!seen) {
                seen = Moment::now();
            }
            return isFilled(table);
        });
        into.painted.push_back(*seen - begun);
        into.filled.push_back(filled - begun);
    }
}

} // namespace

void measureRecords(PaintWatch& application, const LongJournal& journal)
{
    std::vector<Taken> first;
    for (int i = 0; i < timesShown; ++i) {
        BenchDesktop desktop(application, journal);
        (void)desktop.open();
        desktop.signIn();
        const Moment begun = Moment::now();
        desktop.press(Qt::Key_8, Qt::ControlModifier);
        auto& table = desktop.find<QTableView>();
        first.push_back(application.painted(
                            [&] { return table.isVisible() && isFilled(table); })
                        - begun);
        if (i + 1 < timesShown) {
            continue;
        }
        printTimes("the first page of Records", "16", first);
        application.until([&] { return desktop.find<ui::RecordsPage>().isUpToDate(); });
        table.setFocus();
        application.until([&] { return desktop.find<ui::RecordsPage>().isUpToDate(); });
        Steps down;
        scroll(desktop, table, Qt::Key_PageDown, down);
        Steps up;
        scroll(desktop, table, Qt::Key_PageUp, up);
        printTimes("a page down, painted", "16", down.painted);
        printTimes("a page down, all its rows there", "16", down.filled);
        printTimes("a page up, painted", "16", up.painted);
        printTimes("a page up, all its rows there", "16", up.filled);
    }
}

} // namespace loadwarden::benchmarks
