#pragma once

#include "core/desk/cycle_record.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// Whether a load, or an item of it, is decided or signed as reprocess.
[[nodiscard]] bool isToReprocess(const CycleRecord& record);

/// What is to be done to each item, why, and room for who did it and for the new load.
[[nodiscard]] Pages reprocessTicket(const CycleRecord& record, const House& house);

} // namespace loadwarden::paper
