#pragma once

#include "core/desk/cycle_record.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// The record of a load or a test: everything that was recorded of it, each with its author and
/// time, what is decided and what is signed. One page for an ordinary load.
[[nodiscard]] Pages loadRecord(const CycleRecord& record, const House& house);

} // namespace loadwarden::paper
