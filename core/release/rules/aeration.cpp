#include "core/release/rules/rules.h"

namespace loadwarden::rules {

void aeration(const View& view, FindingSink& sink)
{
    if (view.method != Method::ethyleneOxide || view.sterilizer == nullptr) {
        return;
    }
    if (!view.evidence.aeration) {
        sink.add(Key::aerationNotStated, Outcome::waits);
        return;
    }
    const Duration required = *view.evidence.aeration;
    const auto& cycleEnd = view.evidence.load.end;
    const AerationRun* open = nullptr;
    for (const AerationRun& run : view.load.aerationRuns) {
        if (!cycleEnd || !stands(run.start, view.now) || run.start.happenedAt < *cycleEnd
            || run.interrupted
            || run.celsiusHundredths < view.sterilizer->aeration->celsiusHundredths) {
            continue;
        }
        if (run.end && stands(*run.end, view.now)
            && run.end->happenedAt - run.start.happenedAt >= required) {
            return;
        }
        if (!run.end && (open == nullptr || run.start.happenedAt < open->start.happenedAt)) {
            open = &run;
        }
    }
    if (open == nullptr) {
        sink.add(Key::aerationNotDone, Outcome::waits);
        return;
    }
    const Instant reached = open->start.happenedAt + required;
    if (view.now < reached) {
        sink.add(Key::aerationRunning, Outcome::waits).changesAt = reached;
    } else {
        sink.add(Key::aerationEndAwaited, Outcome::waits);
    }
}

} // namespace loadwarden::rules
