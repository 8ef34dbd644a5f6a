#include "core/indicators/chemical.h"

namespace loadwarden {
namespace {

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

bool fitsResponse(Seen good, Response response)
{
    return (good == Seen::frontInAcceptZone && response == Response::movingFront)
           || (good == Seen::endColourReached && response == Response::colour)
           || (good == Seen::uniformComplete && response == Response::sheet);
}

bool isTimely(const Act& act, const IndicatorProduct* product, const CycleContext& cycle)
{
    if (!cycle.end || act.happenedAt < *cycle.end) {
        return false;
    }
    return product == nullptr || !product->readWithinMinutes
           || act.happenedAt <= *cycle.end + Duration::minutes(*product->readWithinMinutes);
}

bool isSpoiled(const ChemicalIndicator& indicator, TypeSet allowedTypes, const CycleContext& cycle,
               const IndicatorRegister& known)
{
    const IndicatorProduct* product = known.productOf(indicator.link);
    const IndicatorLot* lot = known.lotOf(indicator.link);
    return product == nullptr || lot == nullptr || product->kind != IndicatorKind::chemical
           || !isInDate(*lot, cycle.day) || !isMeantFor(*product, cycle)
           || !allowedTypes.contains(product->type) || !indicator.alsoUsedIn.empty();
}

} // namespace

bool isGoodAnswer(Seen seen)
{
    return seen == Seen::frontInAcceptZone || seen == Seen::endColourReached
           || seen == Seen::uniformComplete;
}

bool counts(const IndicatorReading& reading, const IndicatorProduct* product,
            const CycleContext& cycle, Instant now)
{
    if (isGoodAnswer(reading.seen)) {
        return stands(reading.act, now) && product != nullptr
               && fitsResponse(reading.seen, product->response) && !isVoided(reading, now)
               && isTimely(reading.act, product, cycle);
    }
    return !isBadAnswer(reading.seen) || !isVoided(reading, now);
}

bool isMeantFor(const IndicatorProduct& product, const CycleContext& cycle)
{
    if (cycle.method != Method::unknown && !product.methods.contains(cycle.method)) {
        return false;
    }
    if (!cycle.asksCycleType || product.cycleTypes.empty()) {
        return true;
    }
    return !cycle.cycleType.empty()
           && std::find(product.cycleTypes.begin(), product.cycleTypes.end(), cycle.cycleType)
                  != product.cycleTypes.end();
}

bool isInDate(const IndicatorLot& lot, const std::optional<Date>& day)
{
    return lot.expires && (!day || *day <= *lot.expires);
}

ChemicalJudgement judgeChemical(const ChemicalIndicator& indicator, TypeSet allowedTypes,
                                const CycleContext& cycle, const IndicatorRegister& known,
                                Instant now)
{
    const IndicatorProduct* product = known.productOf(indicator.link);
    bool anyGood = false;
    const Settled settled = settle(indicator.readings, indicator.unsettled, indicator.lost,
                                   [&](const IndicatorReading& reading) {
                                       if (isGoodAnswer(reading.seen)) {
                                           anyGood = true;
                                       }
                                       if (!counts(reading, product, cycle, now)) {
                                           return Answer::ignored;
                                       }
                                       return isGoodAnswer(reading.seen)  ? Answer::good
                                              : isBadAnswer(reading.seen) ? Answer::bad
                                                                          : Answer::unclear;
                                   });

    ChemicalJudgement judgement;
    judgement.spoiled = isSpoiled(indicator, allowedTypes, cycle, known);
    switch (settled.state) {
    case SettledState::rejected:
        judgement.state = ChemicalState::rejected;
        judgement.rejectedBy = settled.rejectedBy;
        judgement.absent = false;
        for (const IndicatorReading& reading : indicator.readings) {
            if (!isBadAnswer(reading.seen) || isVoided(reading, now)) {
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
        judgement.state = anyGood ? ChemicalState::invalid : ChemicalState::unread;
        break;
    }
    return judgement;
}

} // namespace loadwarden
