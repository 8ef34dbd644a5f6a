#include "core/release/cycle_contexts.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

bool isReturn(const ServiceEntry& entry, Instant now)
{
    return entry.state == ServiceState::inService && standsAs(entry.act, Role::supervisor, now);
}

/// Whether a supervisor returned the sterilizer to service after a hold began and was known, and
/// before the load began.
bool isLifted(const View& view, Instant from, Instant known)
{
    const auto& service = view.sterilizer->service;
    return std::any_of(service.begin(), service.end(), [&](const ServiceEntry& entry) {
        return isReturn(entry, view.now) && entry.act.recordedAt >= from
               && entry.act.recordedAt >= known && entry.act.recordedAt <= view.start();
    });
}

std::string_view nameOf(ServiceState state)
{
    switch (state) {
    case ServiceState::inService: return "in-service";
    case ServiceState::outOfService: return "out-of-service";
    case ServiceState::qualification: return "qualification";
    case ServiceState::held: return "held";
    }
    return {};
}

void takeEntry(const View& view, const ServiceEntry& entry, FindingSink& sink)
{
    const Instant from = entry.act.happenedAt;
    const Instant known = entry.act.recordedAt;
    const auto& end = view.evidence.load.end;
    if (from > view.start()) {
        if (!end || from <= *end) {
            sink.addReview(Key::sterilizerTakenOutDuring, Reviewer::lead, nameOf(entry.state),
                           entry.act);
        }
        return;
    }
    if (isLifted(view, from, known)) {
        return;
    }
    if (entry.state != ServiceState::held) {
        sink.addOnce(Key::sterilizerNotInService, Outcome::fails, nameOf(entry.state));
    } else if (known <= view.start()) {
        sink.addOnce(Key::sterilizerHeld, Outcome::fails, "held");
    } else {
        sink.addReview(Key::sterilizerHoldNotKnown, Reviewer::supervisor, "held", entry.act);
    }
}

/// The moment from which a past cycle is known to hold the sterilizer, and the acts that show it.
std::optional<Instant> holdKnown(const View& view, const PastCycle& past,
                                 std::pmr::vector<const Act*>& acts)
{
    std::optional<Instant> known;
    const auto take = [&known](Instant at) { known = std::min(known.value_or(at), at); };
    if (past.bi == BiState::positive) {
        const CycleContext context = contextOf(*past.cycle, *past.times);
        for (const Vial& vial : past.cycle->vials) {
            const VialJudgement judged =
                judgeVial(vial, context, true, view.biological, view.evidence.known, view.now);
            if (judged.positiveBy != nullptr) {
                take(judged.positiveSince);
                acts.push_back(judged.positiveBy);
                for (const IndicatorReading& reading : vial.readings) {
                    if (reading.seen == Seen::growth) {
                        acts.push_back(&reading.act);
                    }
                }
            }
        }
    }
    const bool holdsWhenFailed =
        past.cycle->kind == CycleKind::bowieDick || past.cycle->kind == CycleKind::qualification;
    if (holdsWhenFailed && past.test.result == TestResult::failed) {
        take(past.test.failedSince.value_or(*past.times->endForOrder()));
        const TestSurroundings around{view.sterilizer->cycles, view.evidence.history};
        (void)judgeTestCycle(*past.cycle, *past.times, around, view.evidence.known, view.policy,
                             view.now, nullptr, &acts);
    }
    return known;
}

void takePast(const View& view, const PastCycle& past, FindingSink& sink)
{
    std::pmr::vector<const Act*> acts(view.memory);
    const auto known = holdKnown(view, past, acts);
    if (!known || isLifted(view, *past.times->endForOrder(), *known)) {
        return;
    }
    if (*known <= view.start()) {
        sink.addOnce(Key::sterilizerHeld, Outcome::fails, past.cycle->lot);
        return;
    }
    std::erase_if(acts, [&known](const Act* act) { return act->recordedAt != *known; });
    sink.addReview(Key::sterilizerHoldNotKnown, Reviewer::supervisor, past.cycle->lot, *known,
                   acts);
}

} // namespace

void sterilizer(const View& view, FindingSink& sink)
{
    if (view.sterilizer == nullptr || !view.hasStart()) {
        return;
    }
    const auto& service = view.sterilizer->service;
    if (std::none_of(service.begin(), service.end(), [&](const ServiceEntry& entry) {
            return isReturn(entry, view.now) && entry.act.recordedAt <= view.start();
        })) {
        sink.add(Key::sterilizerServiceUnknown, Outcome::waits);
    }
    for (const ServiceEntry& entry : service) {
        if (entry.state != ServiceState::inService) {
            takeEntry(view, entry, sink);
        }
    }
    for (const PastCycle& past : view.history) {
        if (past.before) {
            takePast(view, past, sink);
        }
    }
}

} // namespace loadwarden::rules
