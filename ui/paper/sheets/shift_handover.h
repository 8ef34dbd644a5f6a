#pragma once

#include "core/desk/handover.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// What one shift leaves to the next: indicators that are awaited, what is held and why, tests not
/// run, what was promised, and room to sign that it was heard.
[[nodiscard]] Pages shiftHandover(const Handover& handover, const House& house);

} // namespace loadwarden::paper
