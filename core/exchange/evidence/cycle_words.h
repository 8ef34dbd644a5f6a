#pragma once

#include "core/exchange/evidence/bind.h"
#include "core/sterilizers/sterilizer_record.h"

namespace loadwarden::evidence_format {

inline constexpr Word<ClockSource> clockWords[] = {
    {"facility", ClockSource::facility},
    {"sterilizer", ClockSource::sterilizer},
};

inline constexpr Word<CycleOutcome> outcomeWords[] = {
    {"ended", CycleOutcome::ended},
    {"aborted", CycleOutcome::aborted},
};

/// In the order of CycleKind.
inline constexpr Word<CycleKind> cycleKindWords[] = {
    {"load", CycleKind::load},
    {"warm-up", CycleKind::warmUp},
    {"bowie-dick", CycleKind::bowieDick},
    {"leak", CycleKind::leak},
    {"qualification", CycleKind::qualification},
};

[[nodiscard]] constexpr std::string_view wordOf(CycleKind kind)
{
    return cycleKindWords[static_cast<std::size_t>(kind)].text;
}

} // namespace loadwarden::evidence_format
