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
    const auto covers = [&](const Act& act) {
        return end && causeOf(act, end, view.now) == Cause::none
               && (!load.printout || act.happenedAt >= load.printout->act.recordedAt)
               && std::all_of(load.readings.begin(), load.readings.end(),
                              [&act](const ParameterReading& reading) {
                                  return act.happenedAt >= reading.act.recordedAt;
                              });
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
