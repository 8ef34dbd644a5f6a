#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

/// Whether a lead, other than the one who recorded it, confirmed after the start that it was
/// inside this load.
bool isConfirmed(const View& view, const Item& item)
{
    return item.confirmed && standsAs(*item.confirmed, Role::lead, view.now)
           && item.confirmed->recordedAt >= view.start()
           && !(item.recorded && isSamePerson(item.confirmed->by, item.recorded->by));
}

} // namespace

void wasInside(const View& view, std::size_t index, FindingSink& sink)
{
    if (!view.hasStart()) {
        return;
    }
    const Item& item = view.load.items[index];
    if (isConfirmed(view, item)) {
        return;
    }
    if (!item.alsoInLots.empty() || item.inOtherLoad) {
        sink.add(Key::itemInTwoLoads, Outcome::waits);
    }
    const bool inTime = item.recorded && stands(*item.recorded, view.now)
                        && minuteOf(item.recorded->recordedAt) <= minuteOf(view.start());
    if (!inTime) {
        sink.add(Key::itemRecordedLate, Outcome::waits);
    }
}

} // namespace loadwarden::rules
