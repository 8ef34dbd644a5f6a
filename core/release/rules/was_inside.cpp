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
    const bool confirmed = isConfirmed(view, item);
    if (!item.alsoInLots.empty() || item.inLoadOfHistory) {
        // Who confirmed before the other load began could not know of it.
        const bool answered =
            confirmed
            && (!item.inLoadOfHistory || item.confirmed->recordedAt >= *item.inLoadOfHistory);
        sink.add(Key::itemInTwoLoads, answered ? Outcome::note : Outcome::waits);
    }
    const bool inTime = item.recorded && stands(*item.recorded, view.now)
                        && isFromMinuteOn(view.start(), item.recorded->recordedAt);
    if (!inTime && !confirmed) {
        sink.add(Key::itemRecordedLate, Outcome::waits);
    }
}

} // namespace loadwarden::rules
