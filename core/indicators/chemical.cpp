#include "core/indicators/chemical.h"

namespace loadwarden {

bool isBadAnswer(Seen seen)
{
    switch (seen) {
    case Seen::frontOnBoundary:
    case Seen::frontShortOfBoundary:
    case Seen::endColourPartly:
    case Seen::unchanged:
    case Seen::uniformIncomplete:
    case Seen::notUniform:
    case Seen::absent: return true;
    case Seen::frontInAcceptZone:
    case Seen::endColourReached:
    case Seen::uniformComplete:
    case Seen::growth:
    case Seen::noGrowth:
    case Seen::unclear: return false;
    }
    return false;
}

namespace {

bool fitsResponse(Seen good, Response response)
{
    return (good == Seen::frontInAcceptZone && response == Response::movingFront)
           || (good == Seen::endColourReached && response == Response::colour)
           || (good == Seen::uniformComplete && response == Response::sheet);
}

/// Why a good answer never counts, whenever it is asked; none: it counts once it is recorded.
Cause causeOf(const IndicatorReading& reading, const std::vector<IndicatorReading>& all,
              const IndicatorProduct* product, const CycleContext& cycle)
{
    const Act& act = reading.act;
    if (!isSigned(act)) {
        return Cause::unsignedAct;
    }
    if (act.happenedAt > act.recordedAt) {
        return Cause::timesImpossible;
    }
    if (product == nullptr || !fitsResponse(reading.seen, product->response)) {
        return Cause::otherResponse;
    }
    if (reading.voided) {
        return Cause::voided;
    }
    if (isVoider(all, act.by,
                 [](const IndicatorReading& other) { return isBadAnswer(other.seen); })) {
        return Cause::voider;
    }
    if (!cycle.end || !isFromEndOn(act.happenedAt, *cycle.end)) {
        return Cause::readEarly;
    }
    const bool late =
        product->readWithinMinutes
        && act.happenedAt > *cycle.end + Duration::minutes(*product->readWithinMinutes);
    return late ? Cause::readLate : Cause::none;
}

/// Whether the cycle's type is among a product's, where it names any.
bool fitsCycleType(const IndicatorProduct& product, const CycleContext& cycle)
{
    return !cycle.asksCycleType || product.cycleTypes.empty()
           || (isKnownCycleType(cycle.cycleType)
               && std::any_of(product.cycleTypes.begin(), product.cycleTypes.end(),
                              [&cycle](const std::string& type) {
                                  return isSameCycleType(type, cycle.cycleType);
                              }));
}

/// Whether a reading of a prepared indicator counts that has a good answer.
bool goodCounts(const IndicatorReading& reading, Instant now)
{
    return reading.cause == Cause::none && reading.act.recordedAt <= now;
}

/// The cause that spoils a prepared indicator whose type counts in its place, or does not.
Cause spoiledAt(const ChemicalIndicator& indicator, bool typeCounts)
{
    const bool first = indicator.spoiled != Cause::none && indicator.spoiled < Cause::type;
    return first || typeCounts ? indicator.spoiled : Cause::type;
}

} // namespace

bool counts(const IndicatorReading& reading, Instant now)
{
    if (isGoodAnswer(reading.seen)) {
        return goodCounts(reading, now);
    }
    return !isBadAnswer(reading.seen) || !isBadVoided(reading, now);
}

Cause spoiledByOrigin(ProductLink link, IndicatorKind kind, const CycleContext& cycle,
                      const IndicatorRegister& known)
{
    const Cause missing = missingInRegister(link, cycle, known);
    const Cause unfit = unfitByOrigin(link, kind, cycle, known);
    return missing == Cause::none || unfit == Cause::productUnfit ? unfit : missing;
}

Cause missingInRegister(ProductLink link, const CycleContext& cycle, const IndicatorRegister& known)
{
    if (known.productOf(link) == nullptr) {
        return Cause::productUnknown;
    }
    const IndicatorLot* lot = known.lotOf(link);
    if (lot == nullptr) {
        return Cause::lotUnknown;
    }
    return !lot->expires || (cycle.day && *lot->expires > *cycle.day + longestShelfDays)
               ? Cause::lotWithoutDate
               : Cause::none;
}

Cause unfitByOrigin(ProductLink link, IndicatorKind kind, const CycleContext& cycle,
                    const IndicatorRegister& known)
{
    const IndicatorProduct* product = known.productOf(link);
    if (product == nullptr) {
        return Cause::none;
    }
    if (product->kind != kind) {
        return Cause::productUnfit;
    }
    const IndicatorLot* lot = known.lotOf(link);
    if (lot != nullptr && lot->expires && cycle.day && *cycle.day > *lot->expires) {
        return Cause::lotExpired;
    }
    if (lot != nullptr && lot->recalled) {
        return Cause::lotRecalled;
    }
    if (cycle.method != Method::unknown && !product->methods.contains(cycle.method)) {
        return Cause::method;
    }
    return fitsCycleType(*product, cycle) ? Cause::none : Cause::cycleType;
}

void prepareChemical(ChemicalIndicator& indicator, const CycleContext& cycle,
                     const IndicatorRegister& known)
{
    const IndicatorProduct* product = known.productOf(indicator.link);
    indicator.type = product != nullptr ? product->type : 0;
    indicator.spoiled = spoiledByOrigin(indicator.link, IndicatorKind::chemical, cycle, known);
    if (indicator.spoiled == Cause::none && !indicator.alsoUsedIn.empty()) {
        indicator.spoiled = Cause::usedElsewhere;
    }
    indicator.lacksOnlyLot =
        (indicator.spoiled == Cause::lotUnknown || indicator.spoiled == Cause::lotWithoutDate)
        && indicator.alsoUsedIn.empty()
        && unfitByOrigin(indicator.link, IndicatorKind::chemical, cycle, known) == Cause::none;
    for (IndicatorReading& reading : indicator.readings) {
        reading.cause = isGoodAnswer(reading.seen)
                            ? causeOf(reading, indicator.readings, product, cycle)
                            : Cause::none;
    }
}

ChemicalJudgement judgeChemical(const ChemicalIndicator& indicator, TypeSet allowedTypes,
                                Instant now)
{
    const IndicatorReading* lastGood = nullptr;
    const Settled settled =
        settle(indicator.readings, indicator.unsettled, indicator.lost,
               [&lastGood, now](const IndicatorReading& reading) {
                   if (isGoodAnswer(reading.seen)) {
                       lastGood = &reading;
                       return goodCounts(reading, now) ? Answer::good : Answer::ignored;
                   }
                   if (!isBadAnswer(reading.seen)) {
                       return Answer::unclear;
                   }
                   return isBadVoided(reading, now) ? Answer::ignored : Answer::bad;
               });

    ChemicalJudgement judgement;
    const bool typeCounts = allowedTypes.contains(indicator.type);
    judgement.cause = spoiledAt(indicator, typeCounts);
    judgement.spoiled = judgement.cause != Cause::none;
    judgement.lacksOnlyLot = indicator.lacksOnlyLot && typeCounts;
    switch (settled.state) {
    case SettledState::rejected:
        judgement.state = ChemicalState::rejected;
        judgement.rejectedBy = settled.rejectedBy;
        for (const IndicatorReading& reading : indicator.readings) {
            if (!isBadAnswer(reading.seen) || isBadVoided(reading, now)) {
                continue;
            }
            if (reading.seen != Seen::absent) {
                judgement.absent = false;
                break;
            }
            judgement.absent = judgement.absent || &reading.act == settled.rejectedBy;
        }
        break;
    case SettledState::unclear: judgement.state = ChemicalState::unclear; break;
    case SettledState::accepted:
        judgement.state = judgement.spoiled ? ChemicalState::invalid : ChemicalState::accepted;
        break;
    case SettledState::none:
        judgement.state = lastGood != nullptr ? ChemicalState::invalid : ChemicalState::unread;
        if (!judgement.spoiled && lastGood != nullptr) {
            // What is recorded later than now does not stand, whatever else is wrong with it.
            const bool later = lastGood->act.recordedAt > now;
            judgement.cause = later && lastGood->cause != Cause::unsignedAct
                                  ? Cause::timesImpossible
                                  : lastGood->cause;
        }
        break;
    }
    return judgement;
}

} // namespace loadwarden
