#pragma once

#include "core/desk/cycle_record.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// Whether anything of a load is to stay behind: it, or an item, is decided or signed otherwise
/// than release.
[[nodiscard]] bool isHeld(const CycleRecord& record);

/// What is put on a load, or on what of it stays behind: that nobody is to use it, why, until when,
/// and room to write where it stands.
[[nodiscard]] Pages holdSheet(const CycleRecord& record, const House& house);

} // namespace loadwarden::paper
