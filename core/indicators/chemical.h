#pragma once

#include "core/indicators/cause.h"
#include "core/indicators/cycle_context.h"
#include "core/indicators/register.h"
#include "core/indicators/settle.h"
#include "core/indicators/type_set.h"

namespace loadwarden {

enum class ChemicalState : std::uint8_t { rejected, unclear, accepted, invalid, unread };

/// Works out what a chemical indicator's product, lot and cycle say of it and of its readings, as
/// far as neither the moment of the decision nor a policy matters. Its link must be set and its
/// readings sorted; assemble calls it once.
void prepareChemical(ChemicalIndicator& indicator, const CycleContext& cycle,
                     const IndicatorRegister& known);

/// What a chemical indicator says in its cycle and place (RULES.md, 3).
struct ChemicalJudgement {
    ChemicalState state = ChemicalState::unread;
    bool spoiled = false;            ///< only another indicator of the same cycle can count
    bool lacksOnlyLot = false;       ///< spoiled, but an entry in the register of lots mends it
    bool absent = false;             ///< rejected because it was not there
    const Act* rejectedBy = nullptr; ///< the act that rejected it; null unless rejected
    Cause cause = Cause::none;       ///< why it is spoiled or, unspoiled, invalid
};

/// Judges a prepared indicator at a place where the given types count.
[[nodiscard]] ChemicalJudgement judgeChemical(const ChemicalIndicator& indicator,
                                              TypeSet allowedTypes, Instant now);

/// Whether a seen answer of a chemical indicator is a good one, counted or not.
[[nodiscard]] constexpr bool isGoodAnswer(Seen seen)
{
    return seen == Seen::frontInAcceptZone || seen == Seen::endColourReached
           || seen == Seen::uniformComplete;
}

/// Whether a seen answer of a chemical indicator is a bad one.
[[nodiscard]] bool isBadAnswer(Seen seen);

/// Whether a reading of a prepared chemical indicator counts (RULES.md, 3, Settling).
[[nodiscard]] bool counts(const IndicatorReading& reading, Instant now);

/// Whether a lost statement stands and matters: only what is unread or invalid can be lost; what is
/// unclear was rejected by it.
[[nodiscard]] inline bool isLost(const ChemicalIndicator& indicator, ChemicalState state,
                                 Instant now)
{
    return state != ChemicalState::rejected && state != ChemicalState::accepted && indicator.lost
           && stands(*indicator.lost, now);
}

/// What of product, lot and cycle spoils an indicator of a kind, in the order of RULES.md, 4a, as
/// far as `cycle-type`; none: nothing does. An unknown day of the cycle is not held against a lot.
[[nodiscard]] Cause spoiledByOrigin(ProductLink link, IndicatorKind kind, const CycleContext& cycle,
                                    const IndicatorRegister& known);

/// Of the same, what an entry in the register of products and lots mends.
[[nodiscard]] Cause missingInRegister(ProductLink link, const CycleContext& cycle,
                                      const IndicatorRegister& known);

/// Of the same, what nothing mends, as far as the register knows the indicator.
[[nodiscard]] Cause unfitByOrigin(ProductLink link, IndicatorKind kind, const CycleContext& cycle,
                                  const IndicatorRegister& known);

} // namespace loadwarden
