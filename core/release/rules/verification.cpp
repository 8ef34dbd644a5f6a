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
        return standing(act) && end && act.happenedAt >= *end
               && (!load.printout || act.happenedAt >= load.printout->act.recordedAt)
               && std::all_of(load.readings.begin(), load.readings.end(),
                              [&act](const ParameterReading& reading) {
                                  return act.happenedAt >= reading.act.recordedAt;
                              });
    };
    if (std::none_of(load.verifications.begin(), load.verifications.end(), covers)) {
        sink.add(Key::verificationStale, Outcome::waits);
    }
}

} // namespace loadwarden::rules
