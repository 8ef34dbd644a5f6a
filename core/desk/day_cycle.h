#pragma once

#include "core/desk/load_view.h"
#include "core/desk/sterilizer_day.h"
#include "core/store/finder.h"

namespace loadwarden {

/// A cycle that was looked at, as a day or a list shows it; `found` is the index's row of it.
[[nodiscard]] DayCycle dayCycleOf(const CycleView& view, const FoundCycle& found);

} // namespace loadwarden
