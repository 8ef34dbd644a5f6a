#include "core/acts/fold/cycle_parts.h"

#include <algorithm>

// What belongs to test cycles only.

namespace loadwarden {
namespace {

void foldConditions(Folding& folding, CycleFold& into, bool own)
{
    HistoryCycle& cycle = into.cycle;
    // Of two different values none is known; `worse` of a flag counts from anybody.
    const auto flag = [](std::optional<bool>& kept, const std::optional<bool>& said, bool worse,
                         bool isSignedToo) {
        if (said && (*said == worse || (isSignedToo && !kept))) {
            kept = said;
        }
    };
    bool minutesDiffer = false;
    bool celsiusDiffers = false;
    const auto number = [](std::optional<std::int64_t>& kept, std::int64_t said, bool& differs) {
        differs = differs || (kept && *kept != said);
        kept = said;
    };
    folding.eachValue<TestConditionsRecorded>(
        into.id, own, [&](const Entry& entry, const TestConditionsRecorded& act) {
            const bool counts = isSigned(actOf(entry));
            flag(cycle.chamberEmpty, act.chamberEmpty, false, counts);
            flag(cycle.dryingRun, act.dryingRun, true, counts);
            if (!counts) {
                folding.misfit(entry, MisfitWhy::unsignedFact);
                return;
            }
            if (act.exposureMinutes) {
                number(cycle.exposureMs, act.exposureMinutes->thousandths * 60, minutesDiffer);
            }
            if (act.exposureCelsius) {
                number(cycle.exposureCelsiusHundredths, act.exposureCelsius->thousandths / 10,
                       celsiusDiffers);
            }
        });
    if (minutesDiffer) {
        cycle.exposureMs.reset();
    }
    if (celsiusDiffers) {
        cycle.exposureCelsiusHundredths.reset();
    }
}

/// The rise a minute, where both are known, as a fraction to compare.
bool risesFaster(const LeakReading& a, const LeakReading& b)
{
    const bool known = a.riseThousandthsMbar && a.testMs && *a.testMs > 0;
    const bool otherKnown = b.riseThousandthsMbar && b.testMs && *b.testMs > 0;
    if (!known || !otherKnown) {
        return known && !otherKnown;
    }
    return *a.riseThousandthsMbar * *b.testMs > *b.riseThousandthsMbar * *a.testMs;
}

void foldLeak(Folding& folding, CycleFold& into, bool own)
{
    const auto milliseconds = [](const std::optional<TypedNumber>& minutes) {
        return minutes ? std::optional(minutes->thousandths * 60) : std::nullopt;
    };
    std::optional<std::int64_t> settled;
    bool settledSaid = true;
    folding.eachValue<LeakRead>(into.id, own, [&](const Entry& entry, const LeakRead& act) {
        LeakReading read{.settledMs = milliseconds(act.settledMinutes),
                         .testMs = milliseconds(act.minutes),
                         .riseThousandthsMbar =
                             act.riseMbar ? std::optional(act.riseMbar->thousandths) : std::nullopt,
                         .act = actOf(entry)};
        settledSaid = settledSaid && read.settledMs.has_value();
        if (read.settledMs && (!settled || *read.settledMs < *settled)) {
            settled = read.settledMs;
        }
        if (!into.cycle.leak || risesFaster(read, *into.cycle.leak)) {
            into.cycle.leak = std::move(read);
        }
    });
    if (into.cycle.leak) {
        into.cycle.leak->settledMs = settledSaid ? settled : std::nullopt;
    }
}

} // namespace

void foldTest(Folding& folding, CycleFold& into, bool own)
{
    HistoryCycle& cycle = into.cycle;
    foldConditions(folding, into, own);
    foldLeak(folding, into, own);
    folding.eachValue<TestPhysicalJudged>(
        into.id, own, [&](const Entry& entry, const TestPhysicalJudged& act) {
            if (!cycle.physical || (cycle.physical->good && !act.good)) {
                cycle.physical = PhysicalStatement{act.good, actOf(entry)};
            }
        });
    folding.eachValue<TestVoidExplained>(
        into.id, own, [&](const Entry& entry, const TestVoidExplained& act) {
            if (!cycle.voidReason || cycle.voidReason->act.role < Role::lead) {
                cycle.voidReason = SignedReason{act.why, actOf(entry)};
            }
        });
    for (const ProcessChallengeDevice& pcd : into.load.pcds) {
        cycle.indicators.insert(cycle.indicators.end(), pcd.indicators.begin(),
                                pcd.indicators.end());
    }
}

} // namespace loadwarden
