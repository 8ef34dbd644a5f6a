#include "core/acts/fold/cycle_parts.h"
#include "core/acts/fold/facility.h"
#include "core/acts/fold/seen.h"
#include "core/cycle/limits.h"

#include <algorithm>

// What a load says of itself in another's history (ACTS.md, 6).

namespace loadwarden {
namespace {

/// The first rejecting answer that is not voided, or null.
const Act* rejectedBy(const ChemicalIndicator& indicator)
{
    for (const IndicatorReading& reading : indicator.readings) {
        if (!reading.voided && rankOf(reading.seen, false) == SeenRank::bad) {
            return &reading.act;
        }
    }
    return nullptr;
}

bool isRejectedOrWet(const Item& item)
{
    const auto isRejected = [](const ChemicalIndicator& each) {
        return rejectedBy(each) != nullptr;
    };
    const auto isWet = [](const PackageCheck& check) { return check.dry && !*check.dry; };
    return (item.external && isRejected(*item.external))
           || std::ranges::any_of(item.internals, isRejected)
           || std::ranges::any_of(item.checks, isWet);
}

void addPhysical(Folding& folding, CycleFold& into)
{
    if (into.specification == nullptr) {
        return;
    }
    const CycleSpecification& specification =
        std::get<SpecificationRecorded>(into.specification->current().act).specification;
    const auto atmosphere = foldFacility(folding).atmosphere;
    for (const ParameterReading& reading : into.load.readings) {
        const Limit* const limit = findLimit(specification, reading.parameter);
        if (limit != nullptr && reading.parameter != Parameter::drying
            && checkLeast(*limit, reading.value, atmosphere).against == Against::beyond) {
            into.cycle.failures.push_back({FailureKind::physical, reading.act});
        }
    }
}

void addAlarms(Folding& folding, CycleFold& into)
{
    if (into.load.alarms.empty()) {
        return;
    }
    std::vector<ListedAlarm> listed;
    folding.eachValue<AlarmClassed>(
        into.sterilizer, false,
        [&](const Entry&, const AlarmClassed& act) { listed.push_back(act.alarm); });
    for (const Alarm& alarm : into.load.alarms) {
        bool isClassed = false;
        bool affects = false;
        for (const ListedAlarm& each : listed) {
            isClassed = isClassed || each.code == alarm.code;
            affects = affects
                      || (each.code == alarm.code && each.effect == AlarmEffect::exposureAffecting);
        }
        const auto isolates = [&alarm](const Review& review) {
            return review.finding == "alarm.not-listed" && review.subject == alarm.code
                   && review.answer == ReviewAnswer::isolated && isSigned(review.act)
                   && review.act.role >= Role::lead && review.act.recordedAt >= alarm.act.recordedAt
                   && (review.act.role == Role::supervisor
                       || isAnotherPerson(review.act.by, alarm.act.by));
        };
        const bool isolated = !isClassed && std::ranges::any_of(into.load.reviews, isolates);
        if (affects || (!isClassed && !isolated)) {
            into.cycle.failures.push_back({FailureKind::physical, alarm.act});
        }
    }
}

} // namespace

void foldFailures(Folding& folding, CycleFold& into, bool own)
{
    HistoryCycle& cycle = into.cycle;
    folding.eachValue<FailureRecorded>(into.id, own,
                                       [&](const Entry& entry, const FailureRecorded& act) {
                                           cycle.failures.push_back({act.kind, actOf(entry)});
                                       });
    folding.eachValue<FailureResolved>(
        into.id, own, [&](const Entry& entry, const FailureResolved& act) {
            cycle.resolutions.push_back({.causeKnown = act.causeKnown,
                                         .reach = act.reach,
                                         .what = act.what,
                                         .act = actOf(entry)});
        });
    if (into.isTest()) {
        return;
    }
    addPhysical(folding, into);
    for (const TraceFindings& trace : into.load.traces) {
        if (showsFailure(trace)) {
            cycle.failures.push_back({FailureKind::physical, trace.act});
        }
    }
    addAlarms(folding, into);
    for (const ProcessChallengeDevice& pcd : into.load.pcds) {
        for (const ChemicalIndicator& each : pcd.indicators) {
            if (const Act* const act = rejectedBy(each)) {
                cycle.failures.push_back({FailureKind::pcdRejected, *act});
            }
        }
    }
    cycle.packagesRejectedOrWet = std::ranges::count_if(into.load.items, isRejectedOrWet);
}

} // namespace loadwarden
