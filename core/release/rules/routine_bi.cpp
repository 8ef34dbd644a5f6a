#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void routineBi(const View& view, FindingSink& sink)
{
    if (view.sterilizer == nullptr || !view.hasStart() || view.method == Method::unknown) {
        return;
    }
    const BiFrequency frequency = frequencyOf(view.policy, view.method);
    if (frequency == BiFrequency::everyLoad) {
        return;
    }
    const std::int32_t today = view.evidence.load.day->days;
    const std::int32_t first = frequency == BiFrequency::weekly ? today - 6 : today;
    bool negative = false;
    bool pending = false;
    const auto take = [&](BiState state) {
        negative = negative || state == BiState::negative;
        pending = pending || state == BiState::pending;
    };
    take(view.bi);
    if (isKnownCycleType(view.cycleType)) {
        for (const PastCycle& past : view.history) {
            const std::int32_t day = past.times->day->days;
            if (isSameCycleType(past.cycle->cycleType, view.cycleType) && day >= first
                && day <= today) {
                take(past.bi);
            }
        }
    }
    if (!negative) {
        sink.add(pending ? Key::routinePending : Key::routineNone,
                 view.policy.routineBlocks ? Outcome::waits : Outcome::note);
    }
}

} // namespace loadwarden::rules
