#pragma once

#include "core/loads/load_record.h"
#include "core/quantities/word.h"

namespace loadwarden {

inline constexpr Word<ClockSource> clockWords[] = {
    {"facility", ClockSource::facility},
    {"sterilizer", ClockSource::sterilizer},
};

/// A cycle that has not ended has no word.
inline constexpr Word<CycleOutcome> outcomeWords[] = {
    {"ended", CycleOutcome::ended},
    {"aborted", CycleOutcome::aborted},
};

inline constexpr Word<AbortPhase> abortPhaseWords[] = {
    {"heating", AbortPhase::heating},   {"air-removal", AbortPhase::airRemoval},
    {"exposure", AbortPhase::exposure}, {"exhaust", AbortPhase::exhaust},
    {"drying", AbortPhase::drying},     {"aeration", AbortPhase::aeration},
    {"unknown", AbortPhase::unknown},
};

inline constexpr Word<ReviewAnswer> reviewAnswerWords[] = {
    {"isolated", ReviewAnswer::isolated},
    {"not-isolated", ReviewAnswer::notIsolated},
};

inline constexpr Word<Implant> implantWords[] = {
    {"yes", Implant::yes},
    {"no", Implant::no},
    {"unknown", Implant::unknown},
};

inline constexpr Word<Lumen> lumenWords[] = {
    {"none", Lumen::none},
    {"listed", Lumen::listed},
    {"unlisted", Lumen::unlisted},
};

} // namespace loadwarden
