#include "core/release/rules/rules.h"

namespace loadwarden::rules {
namespace {

bool isFailure(const View& view, const PastCycle& past)
{
    const HistoryCycle& cycle = *past.cycle;
    return cycle.outcome == CycleOutcome::aborted || !cycle.failures.empty()
           || cycle.packagesRejectedOrWet >= view.policy.failedPackages
           || (cycle.kind == CycleKind::leak && past.test.result == TestResult::failed);
}

/// Whether the load is free of it: a lead said cause, action and reach after it happened
/// and was known, and
/// everything that leads said of it frees this load.
bool isFreed(const View& view, const PastCycle& past, Instant newest)
{
    const Instant end = *past.times->endForOrder();
    bool any = false;
    for (const Resolution& resolution : past.cycle->resolutions) {
        if (!standsAs(resolution.act, Role::lead, view.now)) {
            continue;
        }
        any = any
              || (isNamed(resolution.what) && resolution.act.happenedAt >= end
                  && resolution.act.recordedAt >= newest);
        const bool frees = resolution.causeKnown
                           && (resolution.reach == Reach::thatLoad
                               || (view.hasStart() && resolution.act.recordedAt <= view.start()));
        if (!frees) {
            return false;
        }
    }
    return any;
}

} // namespace

void processFailure(const View& view, FindingSink& sink)
{
    for (const PastCycle& past : view.history) {
        if (!past.before || !isFailure(view, past)) {
            continue;
        }
        std::pmr::vector<const Act*> acts(view.memory);
        for (const ProcessFailure& failure : past.cycle->failures) {
            acts.push_back(&failure.act);
        }
        if (past.cycle->leak) {
            acts.push_back(&past.cycle->leak->act);
        }
        const Instant newest = acts.empty() ? *past.times->endForOrder() : newestOf(acts);
        if (!isFreed(view, past, newest)) {
            sink.addReview(Key::processFailureOpen, Reviewer::lead, past.cycle->lot, newest, acts);
        }
    }
}

} // namespace loadwarden::rules
