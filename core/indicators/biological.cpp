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
                                 ? *product.lastMinutes
                                 : product.releaseMinutes);
}

bool isActivated(const IndicatorProduct& product, const std::optional<Act>& activation, Instant now)
{
    return !product.needsActivation || (activation && stands(*activation, now));
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

/// The product of a biological indicator, or null where it is not known as one.
const IndicatorProduct* biologicalProduct(ProductLink link, const IndicatorRegister& known)
{
    const IndicatorProduct* product = known.productOf(link);
    return product != nullptr && product->kind == IndicatorKind::biological ? product : nullptr;
}

bool isInReach(const ControlCandidate& candidate, ControlReach reach,
               const BiologicalSettings& settings)
{
    switch (reach) {
    case ControlReach::day: return candidate.sameDay || candidate.apart <= settings.controlWindow;
    case ControlReach::lot: return true;
    case ControlReach::load: return candidate.forThisLoad;
    }
    return false;
}

/// Growth counts for ever, whatever else is wrong with the vial.
bool takeGrowth(const Vial& vial, Instant now, VialJudgement& judgement)
{
    bool grown = false;
    for (const IndicatorReading& reading : vial.readings) {
        if (reading.seen != Seen::growth) {
            continue;
        }
        if (!grown) {
            judgement.positiveSince = reading.act.recordedAt; // sorted: the first is the earliest
            judgement.positiveBy = &reading.act;
        }
        grown = true;
    }
    if (grown) {
        const bool elsewhere =
            vial.incidentFinding && standsAs(vial.incidentFinding->act, Role::supervisor, now);
        judgement.state = elsewhere ? VialState::positiveElsewhere : VialState::positive;
    }
    return grown;
}

/// Whether something that no later reading can mend is wrong with the vial, controls apart.
bool isSpoiled(const Vial& vial, const CycleContext& cycle, const IndicatorProduct* product,
               const IndicatorRegister& known, Instant now)
{
    const IndicatorLot* lot = known.lotOf(vial.link);
    if ((vial.voided && standsAs(*vial.voided, Role::lead, now)) || product == nullptr
        || lot == nullptr || !isInDate(*lot, cycle.day) || !isMeantFor(*product, cycle)
        || !vial.alsoUsedIn.empty()) {
        return true;
    }
    if (cycle.method != Method::unknown && product->species != speciesOf(cycle.method)) {
        return true;
    }
    if (!isActivated(*product, vial.activation, now)
        || (product->hasProcessIndicator && vial.processIndicator == ProcessIndicator::unchanged)) {
        return true;
    }
    if (vial.incubationStart && cycle.end) {
        return *vial.incubationStart < *cycle.end
               || (product->startWithinMinutes
                   && *vial.incubationStart
                          > *cycle.end + Duration::minutes(*product->startWithinMinutes));
    }
    return false;
}

} // namespace

ControlState judgeControl(const Control& control, const BiologicalSettings& settings,
                          const IndicatorRegister& known, Instant now)
{
    const IndicatorProduct* product = biologicalProduct(control.link, known);
    if (product == nullptr || !control.lotInDate || !control.incubationStart
        || !isActivated(*product, control.activation, now)
        || control.processIndicator == ProcessIndicator::changed) {
        return ControlState::asMissing;
    }
    const Instant start = *control.incubationStart;
    const Instant due = start + readoutOf(*product, settings);
    const Settled settled = settle(
        control.readings, control.unsettled, std::nullopt, [&](const IndicatorReading& reading) {
            switch (reading.seen) {
            case Seen::growth:
                return stands(reading.act, now) && !isVoided(reading, now)
                               && reading.act.happenedAt >= start
                           ? Answer::good
                           : Answer::ignored;
            case Seen::noGrowth:
                return reading.act.happenedAt >= due && !isVoided(reading, now) ? Answer::bad
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

GroupJudgement judgeGroup(const Vial& vial, bool ofHistory, const BiologicalSettings& settings,
                          const IndicatorRegister& known, Instant now)
{
    const IndicatorProduct* product = biologicalProduct(vial.link, known);
    const ControlReach reach =
        product != nullptr && product->control ? *product->control : settings.controlReach;
    bool grown = false;
    bool pending = false;
    for (const ControlCandidate& candidate : vial.controls) {
        if (!isInReach(candidate, reach, settings)) {
            continue;
        }
        switch (judgeControl(known.controls[static_cast<std::size_t>(candidate.control)], settings,
                             known, now)) {
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
    std::optional<Instant> latest;
    if (product != nullptr && vial.incubationStart) {
        judgement.dueAt = *vial.incubationStart + readoutOf(*product, settings);
        if (product->latestMinutes) {
            latest = *vial.incubationStart + Duration::minutes(*product->latestMinutes);
        }
    }
    bool lateGood = false;
    const Settled settled =
        settle(vial.readings, vial.unsettled, std::nullopt, [&](const IndicatorReading& reading) {
            if (reading.seen == Seen::unclear) {
                return Answer::unclear;
            }
            const Act& act = reading.act;
            if (reading.seen != Seen::noGrowth || !judgement.dueAt || !stands(act, now)) {
                return Answer::ignored;
            }
            if (latest && act.happenedAt > *latest) {
                lateGood = true;
                return Answer::ignored;
            }
            const bool counts =
                !isVoided(reading, now) && cycle.end && act.happenedAt >= *judgement.dueAt
                && wasIncubated(vial, readoutOf(*product, settings), act.happenedAt, known);
            return counts ? Answer::good : Answer::ignored;
        });
    if (settled.state == SettledState::rejected) {
        judgement.state = VialState::positive;
        judgement.positiveSince = settled.rejectedBy->recordedAt;
        judgement.positiveBy = settled.rejectedBy;
        return judgement;
    }

    // A vial whose incubation start is not recorded has no group yet: that is said as not started.
    GroupJudgement group = judgeGroup(vial, ofHistory, settings, known, now);
    const bool late = settled.state == SettledState::none && lateGood;
    const bool controlFails =
        vial.incubationStart
        && (group.state == GroupState::dead || group.state == GroupState::missing);
    if (isSpoiled(vial, cycle, product, known, now) || controlFails || late) {
        judgement.state = VialState::voided;
        return judgement;
    }
    const bool accepted = settled.state == SettledState::accepted;
    if (vial.lost && stands(*vial.lost, now) && !(accepted && group.state == GroupState::grown)) {
        judgement.state = VialState::lost;
        return judgement;
    }

    judgement.state = VialState::pending;
    judgement.changesAt = group.awaitedUntil;
    if (settled.state == SettledState::unclear) {
        judgement.why = PendingWhy::unclear;
    } else if (!vial.incubationStart) {
        judgement.why = PendingWhy::notStarted;
    } else if (!accepted && judgement.dueAt && now < *judgement.dueAt) {
        judgement.why = PendingWhy::incubating;
        judgement.changesAt =
            std::min(judgement.changesAt.value_or(*judgement.dueAt), *judgement.dueAt);
    } else if (!accepted) {
        judgement.why = PendingWhy::due;
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

void BiSummary::add(VialState state)
{
    m_any = true;
    m_positive =
        m_positive || state == VialState::positive || state == VialState::positiveElsewhere;
    m_pending = m_pending || state == VialState::pending;
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
