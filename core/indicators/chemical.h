#pragma once

#include "core/indicators/cause.h"
#include "core/indicators/cycle_context.h"
#include "core/indicators/register.h"
#include "core/indicators/settle.h"
#include "core/indicators/type_set.h"

namespace loadwarden {

enum class ChemicalState : std::uint8_t { rejected, unclear, accepted, invalid, unread };

/// What a chemical indicator says in its cycle and place (RULES.md, 3).
struct ChemicalJudgement {
    ChemicalState state = ChemicalState::unread;
    bool spoiled = false;            ///< only another indicator of the same cycle can count
    bool absent = false;             ///< rejected because it was not there
    const Act* rejectedBy = nullptr; ///< the act that rejected it; null unless rejected
    Cause cause = Cause::none;       ///< why it is spoiled or, unspoiled, invalid
};

/// Judges an indicator at a place where the given types count.
[[nodiscard]] ChemicalJudgement judgeChemical(const ChemicalIndicator& indicator,
                                              TypeSet allowedTypes, const CycleContext& cycle,
                                              const IndicatorRegister& known, Instant now);

/// Whether a seen answer of a chemical indicator is a good one, counted or not.
[[nodiscard]] bool isGoodAnswer(Seen seen);

/// Whether a reading of a chemical indicator counts (RULES.md, 3, Settling).
[[nodiscard]] bool counts(const IndicatorReading& reading, const IndicatorProduct* product,
                          const CycleContext& cycle, Instant now);

/// Whether a lost statement stands and matters: only what is unread or invalid can be lost; what is
/// unclear was rejected by it.
[[nodiscard]] inline bool isLost(const ChemicalIndicator& indicator, ChemicalState state,
                                 Instant now)
{
    return state != ChemicalState::rejected && state != ChemicalState::accepted && indicator.lost
           && stands(*indicator.lost, now);
}

/// Whether the method and cycle type are among a product's, as far as they are known.
[[nodiscard]] bool isMeantFor(const IndicatorProduct& product, const CycleContext& cycle);

/// Whether a lot may be used on a day: it states an expiry and the day is not after it. An unknown
/// day is not held against it.
[[nodiscard]] bool isInDate(const IndicatorLot& lot, const std::optional<Date>& day);

} // namespace loadwarden
