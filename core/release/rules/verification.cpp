#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {

void verification(const View& view, FindingSink& sink)
{
    const LoadRecord& load = view.load;
    const auto standing = [&view](const Act& act) { return stands(act, view.now); };
    if (std::none_of(load.verifications.begin(), load.verifications.end(), standing)) {
        sink.add(Key::verificationMissing, Outcome::waits);
        return;
    }
    const auto& end = view.evidence.load.end;
    // Times typed to the minute and times of the computer stand side by side.
    const auto isAfter = [](const Act& act, const Act& seen) {
        return isFromMinuteOn(act.happenedAt, seen.recordedAt);
    };
    const auto covers = [&](const Act& act) {
        return end && causeOf(act, end, view.now) == Cause::none
               && (!load.printout || isAfter(act, load.printout->act))
               && std::all_of(
                   load.readings.begin(), load.readings.end(),
                   [&](const ParameterReading& reading) { return isAfter(act, reading.act); });
    };
    bool any = false;
    bool byAnother = false;
    for (const Act& act : load.verifications) {
        if (covers(act)) {
            any = true;
            byAnother = byAnother || !isSamePerson(act.by, load.operatedBy);
        }
    }
    if (!any) {
        sink.add(Key::verificationStale, Outcome::waits);
    } else if (!byAnother) {
        sink.add(Key::verificationByOperator, Outcome::note);
    }
}

} // namespace loadwarden::rules
