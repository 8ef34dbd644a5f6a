#include "core/release/rules/rules.h"

#include <algorithm>
#include <span>

namespace loadwarden::rules {
namespace {

Key keyOf(PendingWhy why)
{
    switch (why) {
    case PendingWhy::unclear: return Key::biUnclear;
    case PendingWhy::notRegistered: return Key::biNotRegistered;
    case PendingWhy::notStarted: return Key::biNotStarted;
    case PendingWhy::incubating: return Key::biIncubating;
    case PendingWhy::notCounted: return Key::biNotCounted;
    case PendingWhy::due: return Key::biDue;
    case PendingWhy::processIndicator: return Key::biProcessIndicator;
    case PendingWhy::control: return Key::biControl;
    }
    return Key::biDue;
}

/// The newest of what is known of a vial that does not count: a review looks at all of it.
Instant newestOf(const Vial& vial, const Act* raisedBy)
{
    Instant newest = std::max(raisedBy != nullptr ? raisedBy->recordedAt : Instant{INT64_MIN},
                              vial.incubationStart.value_or(Instant{INT64_MIN}));
    for (const IndicatorReading& reading : vial.readings) {
        newest = std::max(newest, reading.act.recordedAt);
    }
    return newest;
}

} // namespace

void bi(const View& view, FindingSink& sink)
{
    // Only void and lost ones left: nothing can come any more that would show the load good.
    const bool onlyVoid = view.hasOnlyVoidVials;
    const auto addVoid = [&](Key key, const LoadVial& each, const Act* raisedBy) {
        const std::string_view id = each.vial->id;
        if (view.biRequired && onlyVoid) {
            return &sink.add(key, Outcome::fails, id);
        }
        if (!view.biRequired && !view.evidence.hasImplant
            && each.judged.cause != Cause::processIndicator) {
            return &sink.add(key, Outcome::note, id);
        }
        return &sink.addReview(key, Reviewer::lead, id, newestOf(*each.vial, raisedBy),
                               std::span(&raisedBy, raisedBy != nullptr ? 1 : 0));
    };
    const auto waits = [&view](PendingWhy why) {
        return view.biRequired || why == PendingWhy::unclear;
    };
    bool anyElsewhere = false;
    bool anyUseful = false; // negative, pending or positive
    for (const LoadVial& each : view.vials) {
        const VialState state = each.judged.state;
        anyElsewhere = anyElsewhere || state == VialState::positiveElsewhere;
        anyUseful = anyUseful || state == VialState::negative || state == VialState::pending
                    || state == VialState::positive;
        const std::string_view id = each.vial->id;
        if (each.judged.unclear && state != VialState::pending) {
            sink.add(Key::biUnclear, Outcome::waits, id);
        }
        switch (each.judged.state) {
        case VialState::negative: break;
        case VialState::positive: sink.add(Key::biPositive, Outcome::fails, id); break;
        case VialState::positiveElsewhere:
            sink.addReview(Key::biPositiveElsewhere, Reviewer::secondSupervisor, id,
                           each.vial->incidentFinding->act);
            break;
        case VialState::pending: {
            const PendingWhy why = each.judged.why;
            Finding& finding =
                sink.add(keyOf(why), waits(why) ? Outcome::waits : Outcome::note, id);
            finding.changesAt = each.judged.changesAt;
            finding.cause = each.judged.cause;
            break;
        }
        case VialState::voided: {
            const Cause cause = each.judged.cause;
            addVoid(Key::biVoid, each, cause == Cause::voided ? &*each.vial->voided : nullptr)
                ->cause = cause;
            break;
        }
        case VialState::lost: addVoid(Key::biLost, each, &*each.vial->lost); break;
        }
    }
    if (view.biRequired && (view.vials.empty() || (anyElsewhere && !anyUseful))) {
        sink.add(Key::biMissing, Outcome::waits);
    }
}

} // namespace loadwarden::rules
