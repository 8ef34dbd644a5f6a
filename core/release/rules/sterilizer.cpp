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
        return isReturn(entry, view.now) && entry.act.happenedAt >= from
               && entry.act.happenedAt >= known && entry.act.recordedAt <= view.start();
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

/// What of a past cycle holds the sterilizer and was not lifted before the load began.
class Holds {
public:
    Holds(const View& view, const PastCycle& past) : m_view(view), m_past(past), m_acts(view.memory)
    {
    }

    /// A hold known at a moment; the acts that show it are added apart.
    void take(Instant known)
    {
        if (isLifted(m_view, *m_past.times->endForOrder(), known)) {
            return;
        }
        m_knownAtStart = m_knownAtStart || known <= m_view.start();
        m_latest = std::max(m_latest.value_or(known), known);
    }
    [[nodiscard]] std::pmr::vector<const Act*>& acts() { return m_acts; }

    void say(FindingSink& sink)
    {
        const std::string& lot = m_past.cycle->lot;
        if (m_knownAtStart) {
            sink.addOnce(Key::sterilizerHeld, Outcome::fails, lot);
        } else if (m_latest) {
            std::erase_if(m_acts, [this](const Act* act) { return act->recordedAt != *m_latest; });
            sink.addReview(Key::sterilizerHoldNotKnown, Reviewer::supervisor, lot, *m_latest,
                           m_acts);
        }
    }

private:
    const View& m_view;
    const PastCycle& m_past;
    std::pmr::vector<const Act*> m_acts;
    bool m_knownAtStart = false;
    std::optional<Instant> m_latest;
};

/// Each positive vial of a past cycle is a hold of its own: a return to service answers the growth
/// that was known then, not what grew later.
void takeVials(const View& view, const PastCycle& past, Holds& holds)
{
    const CycleContext context = contextOf(*past.cycle, *past.times);
    for (const Vial& vial : past.cycle->vials) {
        const VialJudgement judged =
            judgeVial(vial, context, true, view.biological, view.evidence.known, view.now);
        if (judged.positiveBy == nullptr) {
            continue;
        }
        holds.take(judged.positiveSince);
        holds.acts().push_back(judged.positiveBy);
        for (const IndicatorReading& reading : vial.readings) {
            if (reading.seen == Seen::growth) {
                holds.acts().push_back(&reading.act);
            }
        }
    }
}

void takePast(const View& view, const PastCycle& past, FindingSink& sink)
{
    Holds holds(view, past);
    if (past.bi == BiState::positive) {
        takeVials(view, past, holds);
    }
    const bool holdsWhenFailed =
        past.cycle->kind == CycleKind::bowieDick || past.cycle->kind == CycleKind::qualification;
    if (holdsWhenFailed && past.test.failedSince) {
        holds.take(*past.test.failedSince);
        const TestSurroundings around = view.testSurroundings();
        (void)judgeTestCycle(*past.cycle, *past.times, around, view.evidence.known, view.policy,
                             view.now, nullptr, &holds.acts());
    }
    holds.say(sink);
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
