#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void wasInside(const View& view, std::size_t index, FindingSink& sink)
{
    if (!view.hasStart()) {
        return;
    }
    const Item& item = view.load.items[index];
    if (!item.alsoInLots.empty() || item.inOtherLoad) {
        sink.add(Key::itemInTwoLoads, Outcome::waits);
    }
    const bool inTime = item.recorded && stands(*item.recorded, view.now)
                        && item.recorded->recordedAt <= view.start();
    if (!inTime && !(item.confirmed && standsAs(*item.confirmed, Role::lead, view.now))) {
        sink.add(Key::itemRecordedLate, Outcome::waits);
    }
}

} // namespace loadwarden::rules
