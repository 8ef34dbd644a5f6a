#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void order(const View& view, FindingSink& sink)
{
    const CycleTimes& load = view.evidence.load;
    bool offsetUnknown = load.offsetUnknown;
    for (const PastCycle& past : view.history) {
        offsetUnknown = offsetUnknown || past.times->offsetUnknown;
        if (countersDisagree(*past.times, load)) {
            sink.add(Key::orderDisagrees, Outcome::waits, past.cycle->lot);
        }
        const bool backwards = past.times->end && *past.times->start > *past.times->end;
        if (past.times->contradicted) {
            sink.add(Key::orderHistoryDisagrees, Outcome::waits, past.cycle->lot);
        }
        if (load.start
            && (backwards || (!past.before && !past.after) || overlap(*past.times, load))) {
            sink.add(Key::orderOverlaps, Outcome::waits, past.cycle->lot);
        }
    }
    if (offsetUnknown) {
        sink.add(Key::orderOffsetUnknown, Outcome::waits);
    }
}

} // namespace loadwarden::rules
