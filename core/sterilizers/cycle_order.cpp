#include "core/sterilizers/cycle_order.h"

namespace loadwarden {

bool isBefore(const CycleTimes& a, const CycleTimes& b)
{
    if (a.counter && b.counter) {
        return *a.counter < *b.counter;
    }
    if (!a.start || !b.start) {
        return false;
    }
    return minuteOf(*a.endForOrder()) <= minuteOf(*b.start);
}

bool overlap(const CycleTimes& a, const CycleTimes& b)
{
    return a.start && a.end && b.start && b.end && minuteOf(*a.end) > minuteOf(*b.start)
           && minuteOf(*b.end) > minuteOf(*a.start);
}

bool countersDisagree(const CycleTimes& a, const CycleTimes& b)
{
    if (!a.counter || !b.counter || !a.start || !b.start) {
        return false;
    }
    if (*a.counter == *b.counter) {
        return true;
    }
    return *a.counter < *b.counter ? *a.start > *b.start : *b.start > *a.start;
}

} // namespace loadwarden
