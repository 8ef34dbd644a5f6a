#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

/// Whether a run was warmer than any cabinet gets by itself: Fahrenheit typed as Celsius is.
bool isImplausible(const AerationRun& run, const SterilizerAeration& stated)
{
    constexpr std::int64_t mostAboveHundredths = 30'00;
    return run.celsiusHundredths > stated.celsiusHundredths + mostAboveHundredths;
}

} // namespace

void aeration(const View& view, FindingSink& sink)
{
    if (view.method != Method::ethyleneOxide || view.sterilizer == nullptr) {
        return;
    }
    const auto& stated = view.sterilizer->aeration;
    if (stated
        && std::any_of(view.load.aerationRuns.begin(), view.load.aerationRuns.end(),
                       [&stated](const AerationRun& run) { return isImplausible(run, *stated); })) {
        sink.add(Key::aerationImplausible, Outcome::waits);
    }
    if (!view.evidence.aeration) {
        sink.add(Key::aerationNotStated, Outcome::waits);
        return;
    }
    const Duration required = *view.evidence.aeration;
    const auto& cycleEnd = view.evidence.load.end;
    const AerationRun* open = nullptr;
    for (const AerationRun& run : view.load.aerationRuns) {
        if (!cycleEnd || causeOf(run.start, cycleEnd, view.now) != Cause::none || run.interrupted
            || run.celsiusHundredths < stated->celsiusHundredths || isImplausible(run, *stated)) {
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
