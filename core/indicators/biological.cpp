#include "core/indicators/biological.h"

namespace loadwarden {
namespace {

Species speciesOf(Method method)
{
    return method == Method::ethyleneOxide || method == Method::dryHeat
               ? Species::bacillusAtrophaeus
               : Species::geobacillusStearothermophilus;
}

Duration readoutOf(const IndicatorProduct& product, const BiologicalSettings& settings)
{
    return Duration::minutes(settings.useLastReadout && product.lastMinutes
                                 ? std::max(*product.lastMinutes, product.releaseMinutes)
                                 : product.releaseMinutes);
}

/// Whether what needs it was activated before it was incubated.
bool isActivated(const IndicatorProduct& product, const std::optional<Act>& activation,
                 Instant incubationStart, Instant now)
{
    return !product.needsActivation
           || (activation && stands(*activation, now)
               && isFromMinuteOn(incubationStart, activation->happenedAt));
}

/// Whether the incubator was in range at a reading and, since it last was not, for the whole
/// readout.
bool wasIncubated(const Vial& vial, Duration readout, Instant at, const IndicatorRegister& known)
{
    if (vial.incubatorIndex < 0) {
        return true;
    }
    for (const OutOfRange& span :
         known.incubators[static_cast<std::size_t>(vial.incubatorIndex)].outOfRange) {
        if (span.from > at || (span.to && *span.to < *vial.incubationStart)) {
            continue;
        }
        if (!span.to || at <= *span.to || at < *span.to + readout) {
            return false;
        }
    }
    return true;
}

/// No readout is faster (common practice, no source): what grew in less was typed wrong.
constexpr std::int64_t fastestMinutes = 10;

/// The shortest readout that is believed of a product in a cycle: spores of ethylene oxide and dry
/// heat take hours (common practice, no source).
std::int64_t shortestReadout(Method method)
{
    return method == Method::ethyleneOxide || method == Method::dryHeat ? 120 : fastestMinutes;
}

/// What the register does not know of a vial whose product and lot it knows: the incubator that it
/// names, of which nobody knows then whether it was in range, or a readout that can be.
Cause missingBeside(const Vial& vial, const CycleContext& cycle, const IndicatorRegister& known)
{
    if (isNamed(vial.incubator) && vial.incubatorIndex < 0) {
        return Cause::incubatorUnknown;
    }
    const IndicatorProduct* product = known.productOf(vial.link);
    return product->kind == IndicatorKind::biological
                   && product->releaseMinutes < shortestReadout(cycle.method)
               ? Cause::readoutImplausible
               : Cause::none;
}

/// The product of a biological indicator, or null where it is not known as one.
const IndicatorProduct* biologicalProduct(ProductLink link, const IndicatorRegister& known)
{
    const IndicatorProduct* product = known.productOf(link);
    return product != nullptr && product->kind == IndicatorKind::biological ? product : nullptr;
}

bool isOnSameDayOrNear(const Vial& vial, const Control& control, Duration window)
{
    if (!vial.incubationStart || !control.incubationStart) {
        return false;
    }
    return control.incubationDay == vial.incubationDay
           || magnitude(*control.incubationStart - *vial.incubationStart) <= window;
}

bool isInReach(const Vial& vial, const Control& control, std::string_view lotOfCycle,
               ControlReach reach, const BiologicalSettings& settings)
{
    switch (reach) {
    case ControlReach::day: return isOnSameDayOrNear(vial, control, settings.controlWindow);
    case ControlReach::lot: return true;
    case ControlReach::load: return !lotOfCycle.empty() && control.forLoad == lotOfCycle;
    }
    return false;
}

/// Growth counts for ever, whatever else is wrong with the vial.
bool takeGrowth(const Vial& vial, Instant now, VialJudgement& judgement)
{
    bool grown = false;
    Instant newest{};
    for (const IndicatorReading& reading : vial.readings) {
        if (reading.seen != Seen::growth) {
            continue;
        }
        newest = reading.act.recordedAt;
        if (!grown) {
            judgement.positiveSince = reading.act.recordedAt; // sorted: the first is the earliest
            judgement.positiveBy = &reading.act;
        }
        grown = true;
    }
    if (grown) {
        // Sorted: the last is the newest. A finding says nothing of growth that came after it.
        const bool elsewhere = vial.incidentFinding
                               && standsAs(vial.incidentFinding->act, Role::supervisor, now)
                               && vial.incidentFinding->act.recordedAt >= newest;
        judgement.state = elsewhere ? VialState::positiveElsewhere : VialState::positive;
    }
    return grown;
}

/// Whether a vial that needs it was activated after its cycle and before it was incubated. One that
/// is not incubated yet can still be activated.
bool isActivatedAfter(const IndicatorProduct& product, const Vial& vial, const CycleContext& cycle,
                      Instant now)
{
    if (!product.needsActivation || !vial.incubationStart) {
        return true;
    }
    return isActivated(product, vial.activation, *vial.incubationStart, now)
           && (!cycle.end || isFromEndOn(vial.activation->happenedAt, *cycle.end));
}

/// What that no later reading can mend is wrong with the vial, controls apart.
Cause spoiledBy(const Vial& vial, const CycleContext& cycle, const IndicatorRegister& known,
                Instant now)
{
    if (vial.voided && standsAs(*vial.voided, Role::lead, now)) {
        return Cause::voided;
    }
    const Cause origin = unfitByOrigin(vial.link, IndicatorKind::biological, cycle, known);
    if (origin != Cause::none) {
        return origin;
    }
    const IndicatorProduct* product = known.productOf(vial.link);
    if (product != nullptr && cycle.method != Method::unknown
        && product->species != speciesOf(cycle.method)) {
        return Cause::species;
    }
    if (!vial.alsoUsedIn.empty()) {
        return Cause::usedElsewhere;
    }
    if (product != nullptr && !isActivatedAfter(*product, vial, cycle, now)) {
        return Cause::notActivated;
    }
    if (vial.processIndicator == ProcessIndicator::unchanged) {
        return Cause::processIndicator;
    }
    if (!vial.incubationStart || !cycle.end) {
        return Cause::none;
    }
    if (!isFromEndOn(*vial.incubationStart, *cycle.end)) {
        return Cause::incubatedEarly;
    }
    const bool late =
        product != nullptr && product->startWithinMinutes
        && *vial.incubationStart > *cycle.end + Duration::minutes(*product->startWithinMinutes);
    return late ? Cause::incubatedLate : Cause::none;
}

/// What a no-growth must meet to count.
struct NoGrowthLimits {
    std::optional<Instant> due;    ///< nullopt: no readout is known
    std::optional<Instant> latest; ///< nullopt: none is stated
    Duration readout{};
};

/// Why a no-growth of a vial does not count; none: it does.
Cause causeOf(const IndicatorReading& reading, const Vial& vial, const CycleContext& cycle,
              const NoGrowthLimits& limits, const IndicatorRegister& known, Instant now)
{
    const Act& act = reading.act;
    if (!isSigned(act)) {
        return Cause::unsignedAct;
    }
    if (!stands(act, now)) {
        return Cause::timesImpossible;
    }
    if (reading.voided) {
        return Cause::voided;
    }
    if (!cycle.end || !limits.due || act.happenedAt < *limits.due) {
        return Cause::readEarly;
    }
    if (!wasIncubated(vial, limits.readout, act.happenedAt, known)) {
        return Cause::incubator;
    }
    return limits.latest && act.happenedAt > *limits.latest ? Cause::readLate : Cause::none;
}

} // namespace

std::optional<Instant> deadFrom(const Control& control, const BiologicalSettings& settings,
                                const IndicatorRegister& known)
{
    const IndicatorProduct* product = biologicalProduct(control.link, known);
    return product != nullptr && control.incubationStart
               ? std::optional(*control.incubationStart + readoutOf(*product, settings))
               : std::nullopt;
}

ControlState judgeControl(const Control& control, const BiologicalSettings& settings,
                          const IndicatorRegister& known, Instant now)
{
    const IndicatorProduct* product = biologicalProduct(control.link, known);
    if (product == nullptr || !control.lotInDate || !control.incubationStart
        || !isActivated(*product, control.activation, *control.incubationStart, now)
        || control.processIndicator == ProcessIndicator::changed) {
        return ControlState::asMissing;
    }
    const Instant start = *control.incubationStart;
    const Instant due = *deadFrom(control, settings, known);
    const auto isDead = [due](const IndicatorReading& reading) {
        return reading.seen == Seen::noGrowth && reading.act.happenedAt >= due;
    };
    const bool anyVoided =
        std::any_of(control.readings.begin(), control.readings.end(),
                    [](const IndicatorReading& reading) { return reading.voided.has_value(); });
    const Settled settled = settle(
        control.readings, control.unsettled, std::nullopt, [&](const IndicatorReading& reading) {
            switch (reading.seen) {
            case Seen::growth:
                return stands(reading.act, now) && !reading.voided
                               && minuteOf(reading.act.happenedAt)
                                      >= minuteOf(start) + fastestMinutes
                               && !(anyVoided && isVoider(control.readings, reading.act.by, isDead))
                           ? Answer::good
                           : Answer::ignored;
            case Seen::noGrowth:
                return isDead(reading) && !isBadVoided(reading, now) ? Answer::bad
                                                                     : Answer::ignored;
            case Seen::unclear: return Answer::unclear;
            default: return Answer::ignored;
            }
        });
    switch (settled.state) {
    case SettledState::accepted: return ControlState::grown;
    case SettledState::rejected: return ControlState::dead;
    case SettledState::none:
    case SettledState::unclear: break;
    }
    return ControlState::pending;
}

GroupJudgement judgeGroup(const Vial& vial, const CycleContext& cycle, bool ofHistory,
                          const BiologicalSettings& settings, const IndicatorRegister& known,
                          Instant now)
{
    const IndicatorProduct* product = biologicalProduct(vial.link, known);
    const ControlReach reach =
        product != nullptr && product->control ? *product->control : settings.controlReach;
    bool grown = false;
    bool pending = false;
    for (std::int32_t i = 0; i < vial.controls.count; ++i) {
        const std::int32_t index =
            known.controlOrder[static_cast<std::size_t>(vial.controls.first + i)];
        const Control& control = known.controls[static_cast<std::size_t>(index)];
        if (!isInReach(vial, control, cycle.lot, reach, settings)) {
            continue;
        }
        switch (settings.controlStates.empty()
                    ? judgeControl(control, settings, known, now)
                    : settings.controlStates[static_cast<std::size_t>(index)]) {
        case ControlState::dead: return {GroupState::dead, {}};
        case ControlState::grown: grown = true; break;
        case ControlState::pending: pending = true; break;
        case ControlState::asMissing: break;
        }
    }
    if (grown) {
        return {GroupState::grown, {}};
    }
    if (pending) {
        return {GroupState::pending, {}};
    }
    if (!ofHistory && vial.incubationStart) {
        const Instant until =
            std::max(vial.midnightAfterStart, *vial.incubationStart + settings.controlWindow);
        if (now < until) {
            return {GroupState::awaited, until};
        }
    }
    return {GroupState::missing, {}};
}

VialJudgement judgeVial(const Vial& vial, const CycleContext& cycle, bool ofHistory,
                        const BiologicalSettings& settings, const IndicatorRegister& known,
                        Instant now)
{
    VialJudgement judgement;
    if (takeGrowth(vial, now, judgement)) {
        return judgement;
    }

    const IndicatorProduct* product = biologicalProduct(vial.link, known);
    NoGrowthLimits limits;
    if (product != nullptr && vial.incubationStart) {
        limits.readout = readoutOf(*product, settings);
        limits.due = *vial.incubationStart + limits.readout;
        if (product->latestMinutes) {
            limits.latest = *vial.incubationStart + Duration::minutes(*product->latestMinutes);
        }
    }
    judgement.dueAt = limits.due;
    bool lateGood = false;
    Cause notCounted = Cause::none; // of the last no-growth
    const Settled settled =
        settle(vial.readings, vial.unsettled, std::nullopt, [&](const IndicatorReading& reading) {
            if (reading.seen == Seen::unclear) {
                return Answer::unclear;
            }
            if (reading.seen != Seen::noGrowth) {
                return Answer::ignored;
            }
            lateGood = lateGood
                       || (limits.latest && reading.act.happenedAt > *limits.latest
                           && stands(reading.act, now));
            notCounted = causeOf(reading, vial, cycle, limits, known, now);
            return notCounted == Cause::none ? Answer::good : Answer::ignored;
        });
    if (settled.state == SettledState::rejected) {
        judgement.state = VialState::positive;
        judgement.positiveSince = settled.rejectedBy->recordedAt;
        judgement.positiveBy = settled.rejectedBy;
        return judgement;
    }

    // Growth that one reader could not exclude is not undone by anything wrong with the vial.
    judgement.unclear = settled.state == SettledState::unclear;

    // A vial whose incubation start is not recorded, or whose product or lot the register does not
    // know, has no group yet: that is said as not started or not registered.
    const Cause unlisted = missingInRegister(vial.link, cycle, known);
    const Cause unregistered =
        unlisted != Cause::none ? unlisted : missingBeside(vial, cycle, known);
    const bool hasGroup = vial.incubationStart && unlisted == Cause::none;
    const GroupJudgement group = hasGroup ? judgeGroup(vial, cycle, ofHistory, settings, known, now)
                                          : GroupJudgement{GroupState::pending, {}};
    const bool accepted = settled.state == SettledState::accepted;
    judgement.cause = spoiledBy(vial, cycle, known, now);
    if (judgement.cause == Cause::none && vial.lost && stands(*vial.lost, now)
        && !(accepted && group.state == GroupState::grown)) {
        judgement.state = VialState::lost;
        judgement.cause = Cause::lost;
        return judgement;
    }
    if (judgement.cause == Cause::none && hasGroup) {
        judgement.cause = group.state == GroupState::dead      ? Cause::controlDead
                          : group.state == GroupState::missing ? Cause::controlMissing
                                                               : Cause::none;
    }
    if (judgement.cause == Cause::none && settled.state == SettledState::none && lateGood) {
        judgement.cause = Cause::readLate;
    }
    if (judgement.cause != Cause::none) {
        judgement.state = VialState::voided;
        return judgement;
    }

    judgement.state = VialState::pending;
    judgement.changesAt = group.awaitedUntil;
    if (judgement.unclear) {
        judgement.why = PendingWhy::unclear;
        return judgement;
    }
    if (unregistered != Cause::none) {
        judgement.why = PendingWhy::notRegistered;
        judgement.cause = unregistered;
    } else if (!vial.incubationStart) {
        judgement.why = PendingWhy::notStarted;
    } else if (!accepted && judgement.dueAt && now < *judgement.dueAt) {
        judgement.why = PendingWhy::incubating;
        judgement.changesAt =
            std::min(judgement.changesAt.value_or(*judgement.dueAt), *judgement.dueAt);
    } else if (!accepted) {
        judgement.why = notCounted == Cause::none ? PendingWhy::due : PendingWhy::notCounted;
        judgement.cause = notCounted;
    } else if (product->hasProcessIndicator && vial.processIndicator == ProcessIndicator::unknown) {
        judgement.why = PendingWhy::processIndicator;
    } else if (group.state != GroupState::grown) {
        judgement.why = PendingWhy::control;
    } else {
        judgement.state = VialState::negative;
        judgement.changesAt.reset();
    }
    return judgement;
}

void BiSummary::add(const VialJudgement& vial)
{
    const VialState state = vial.state;
    m_any = true;
    m_positive =
        m_positive || state == VialState::positive || state == VialState::positiveElsewhere;
    m_pending = m_pending || state == VialState::pending || vial.unclear;
    m_negative = m_negative || state == VialState::negative;
}

BiState BiSummary::state() const
{
    if (!m_any) {
        return BiState::none;
    }
    if (m_positive) {
        return BiState::positive;
    }
    if (m_pending) {
        return BiState::pending;
    }
    return m_negative ? BiState::negative : BiState::voided;
}

} // namespace loadwarden
