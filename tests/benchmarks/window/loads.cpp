#include "tests/benchmarks/window/figures.h"
#include "tests/benchmarks/window/measures.h"
#include "ui/load/cycle_desk.h"
#include "ui/load/cycle_list.h"
#include "ui/load/load_page.h"
#include "ui/load/load_view.h"

#include <QTest>

#include <random>

namespace loadwarden::benchmarks {
namespace {

constexpr int timesOpened = 30;
constexpr int lookMs = 800; ///< at least that long somebody looks at a load before the next one

/// Has the load before the eyes that `press` asks for, and gives the time from then on.
Taken opened(BenchDesktop& desktop, const std::function<void()>& press)
{
    auto& page = desktop.find<ui::LoadPage>();
    const ui::LoadView* const before = page.view();
    const Moment begun = Moment::now();
    press();
    const Moment there = desktop.application().painted([&] {
        ui::LoadView* const view = page.view();
        return view != nullptr && view != before && view->isVisible()
               && view->desk().sheet() != nullptr;
    });
    desktop.application().until([&] { return page.isUpToDate(); });
    QTest::qWait(lookMs);
    return there - begun;
}

std::string lotOf(std::int64_t number)
{
    const std::int64_t sterilizer = number % loadsADay % 10 + 1;
    return std::to_string(sterilizer) + '-' + std::to_string(number);
}

} // namespace

void measureLoads(BenchDesktop& desktop, const LongJournal& journal)
{
    desktop.press(Qt::Key_2, Qt::ControlModifier);
    auto& page = desktop.find<ui::LoadPage>();
    desktop.application().until([&] { return page.isVisible() && page.isUpToDate(); });
    auto& list = desktop.find<ui::CycleList>();
    std::vector<Taken> first;
    std::vector<Taken> again;
    const auto click = [&](int row) {
        list.scrollToItem(list.item(row));
        const QRect place = list.visualItemRect(list.item(row));
        return opened(desktop, [&] {
            QTest::mouseClick(list.viewport(), Qt::LeftButton, {}, place.center());
        });
    };
    std::vector<int> rows;
    for (int i = 0; i < list.count() && rows.size() < timesOpened; ++i) {
        if ((list.item(i)->flags() & Qt::ItemIsSelectable) != 0) {
            rows.push_back(i);
        }
    }
    for (const int row : rows) {
        first.push_back(click(row));
    }
    for (int i = 0; i < 10; ++i) {
        again.push_back(click(rows.at(rows.size() - 2 - static_cast<std::size_t>(i % 2))));
    }
    printTimes("a load of today opened by its row", "50", first);
    printTimes("one that was open before", "50", again);

    std::mt19937_64 random(1);
    std::vector<Taken> scanned;
    for (int i = 0; i < timesOpened; ++i) {
        const auto number = static_cast<std::int64_t>(
            random() % static_cast<std::uint64_t>(journal.loads));
        desktop.scan(QString::fromStdString(lotOf(number)));
        scanned.push_back(opened(desktop, [&] { desktop.press(Qt::Key_Return); }));
    }
    printTimes("any load of the journal opened by a scan", "50", scanned);
}

} // namespace loadwarden::benchmarks
