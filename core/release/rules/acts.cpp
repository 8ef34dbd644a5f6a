#include "core/release/each_act.h"
#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

/// What only the moment of the decision can tell: acts recorded later than it.
struct Future {
    int count = 0;
    std::optional<Instant> nextStanding; ///< when the first of those that will stand comes to stand
};

Future futureActs(const View& view)
{
    Future future;
    if (view.evidence.acts.newestRecorded <= view.now) {
        return future;
    }
    const auto take = [&](const Act& act, const ActPlace&) {
        if (act.recordedAt <= view.now) {
            return;
        }
        if (act.happenedAt <= act.recordedAt) {
            ++future.count;
            if (!future.nextStanding || act.recordedAt < *future.nextStanding) {
                future.nextStanding = act.recordedAt;
            }
        }
    };
    forEachAct(view.evidence.record, view.evidence.known.controls, take);
    return future;
}

} // namespace

void acts(const View& view, FindingSink& sink)
{
    const ActSummary& summary = view.evidence.acts;
    for (const UnsignedActs& each : summary.unsignedActs) {
        sink.add(Key::actUnsigned, Outcome::waits, each.field).count = each.count;
    }
    const Future future = futureActs(view);
    if (summary.backwards + future.count > 0) {
        Finding& finding = sink.add(Key::actTimesImpossible, Outcome::waits);
        finding.count = summary.backwards + future.count;
        finding.changesAt = future.nextStanding;
    }
    if (summary.longestGapInLoad > view.policy.lateAfter) {
        sink.add(Key::actRecordedLate, Outcome::note);
    }
}

} // namespace loadwarden::rules
