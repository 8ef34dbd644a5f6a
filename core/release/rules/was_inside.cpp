#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {

void wasInside(const View& view, std::size_t index, FindingSink& sink)
{
    if (!view.hasStart()) {
        return;
    }
    const Item& item = view.load.items[index];
    const bool inOtherLoad =
        std::any_of(view.history.begin(), view.history.end(), [&item](const PastCycle& past) {
            const auto& labels = past.cycle->items;
            return past.cycle->kind == CycleKind::load
                   && std::find(labels.begin(), labels.end(), item.label) != labels.end();
        });
    if (!item.alsoInLots.empty() || inOtherLoad) {
        sink.add(Key::itemInTwoLoads, Outcome::waits);
    }
    const bool inTime = item.recorded && stands(*item.recorded, view.now)
                        && item.recorded->recordedAt <= view.start();
    if (!inTime && !(item.confirmed && standsAs(*item.confirmed, Role::lead, view.now))) {
        sink.add(Key::itemRecordedLate, Outcome::waits);
    }
}

} // namespace loadwarden::rules
