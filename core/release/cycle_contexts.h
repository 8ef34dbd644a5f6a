#pragma once

#include "core/indicators/cycle_context.h"
#include "core/release/evidence.h"

namespace loadwarden {

/// What an indicator needs to know of a cycle of the history, or of a test.
[[nodiscard]] CycleContext contextOf(const HistoryCycle& cycle, const CycleTimes& times);

/// What a Bowie-Dick sheet needs to know: it is meant for steam, whatever the cycle type.
[[nodiscard]] CycleContext sheetContextOf(const HistoryCycle& cycle, const CycleTimes& times);

/// What an indicator needs to know of the load's own cycle.
[[nodiscard]] CycleContext loadContextOf(const EvidenceRecord& record, const CycleTimes& times);

} // namespace loadwarden
