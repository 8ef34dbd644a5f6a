#include "core/release/rules/rules.h"
#include "core/indicators/positive.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

bool isSameKnownType(std::string_view a, std::string_view b)
{
    return !a.empty() && a == b;
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
        return view.bi == BiState::negative && isSameKnownType(view.cycleType, type) && positive.before;
    }
    return std::any_of(view.history.begin(), view.history.end(), [&](const PastCycle& other) {
        return other.cycle->lot == lot && &other != &positive && other.bi == BiState::negative
            && isSameKnownType(other.cycle->cycleType, type) && isBefore(*positive.times, *other.times)
            && other.before;
    });
}

bool isClosed(const View& view, const PastCycle& positive)
{
    for (const Incident& incident : view.sterilizer->incidents) {
        if (incident.positiveLot != positive.cycle->lot) {
            continue;
        }
        for (const Closing& closing : incident.closings) {
            if (standsAs(closing.act, Role::supervisor, view.now)
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
    for (const PastCycle& past : view.history) {
        if (past.bi != BiState::positive) {
            continue;
        }
        const bool otherType = view.policy.scopeBy == ScopeBy::cycleType && !view.cycleType.empty()
            && !past.cycle->cycleType.empty() && view.cycleType != past.cycle->cycleType;
        if (otherType || isClearedBefore(view, past) || isClosed(view, past)) {
            continue;
        }
        std::pmr::vector<const Act*> acts(view.memory);
        const CycleContext context = contextOf(*past.cycle, *past.times);
        for (const Vial& vial : past.cycle->vials) {
            const VialState state
                = judgeVial(vial, context, true, view.biological, view.evidence.known, view.now).state;
            if (state == VialState::positive || state == VialState::positiveElsewhere) {
                forEachPositiveAct(vial, [&acts](const Act& act) { acts.push_back(&act); });
            }
        }
        Instant newest = acts.front()->recordedAt;
        for (const Act* act : acts) {
            newest = std::max(newest, act->recordedAt);
        }
        sink.addReview(Key::scopeInPositive, Reviewer::supervisor, past.cycle->lot, newest, acts);
    }
}

} // namespace loadwarden::rules
