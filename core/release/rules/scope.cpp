#include "core/indicators/positive.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

bool isSameKnownType(std::string_view a, std::string_view b)
{
    return isKnownCycleType(a) && isSameCycleType(a, b);
}

/// Whether a negative of the same type lies between the load and a positive after it: one before
/// the positive that is the load's own or came after the load.
bool isClearedBefore(const View& view, const PastCycle& positive)
{
    const std::string& type = positive.cycle->cycleType;
    if (view.bi == BiState::negative && isSameKnownType(view.cycleType, type) && positive.after) {
        return true;
    }
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& other) {
        return &other != &positive && other.bi == BiState::negative
               && isSameKnownType(other.cycle->cycleType, type) && other.after
               && isBefore(*other.times, *positive.times);
    });
}

/// Whether a lot is that of a negative after the positive, and the load is not before it.
bool isClosingCycle(const View& view, const PastCycle& positive, const std::string& lot)
{
    const std::string& type = positive.cycle->cycleType;
    if (!view.load.lot.empty() && lot == view.load.lot) {
        return view.bi == BiState::negative && isSameKnownType(view.cycleType, type)
               && positive.before;
    }
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& other) {
        return other.cycle->lot == lot && &other != &positive && other.bi == BiState::negative
               && isSameKnownType(other.cycle->cycleType, type)
               && isBefore(*positive.times, *other.times) && other.before;
    });
}

/// Whether a supervisor closed the positive's incident when all its growth was known.
bool isClosed(const View& view, const PastCycle& positive, Instant newest)
{
    for (const Incident& incident : view.sterilizer->incidents) {
        if (incident.positiveLot != positive.cycle->lot) {
            continue;
        }
        for (const Closing& closing : incident.closings) {
            if (standsAs(closing.act, Role::supervisor, view.now)
                && closing.act.recordedAt >= newest
                && isClosingCycle(view, positive, closing.negativeLot)) {
                return true;
            }
        }
    }
    return false;
}

} // namespace

void scope(const View& view, FindingSink& sink)
{
    if (view.sterilizer != nullptr && view.history.empty()) {
        sink.add(Key::scopeNoHistory, Outcome::note);
    }
    for (const PastCycle& past : view.history) {
        if (past.bi != BiState::positive) {
            continue;
        }
        const std::pmr::vector<const Act*> acts = positiveActs(past.cycle->vials, view.memory);
        const Instant newest = newestOf(acts);
        if (isClearedBefore(view, past) || isClosed(view, past, newest)) {
            continue;
        }
        const std::string& type = past.cycle->cycleType;
        if (view.policy.scopeBy == ScopeBy::cycleType && isKnownCycleType(view.cycleType)
            && isKnownCycleType(type) && !isSameCycleType(view.cycleType, type)) {
            sink.add(Key::scopeOtherType, Outcome::note, past.cycle->lot);
            continue;
        }
        sink.addReview(Key::scopeInPositive, Reviewer::supervisor, past.cycle->lot, newest, acts);
    }
}

} // namespace loadwarden::rules
