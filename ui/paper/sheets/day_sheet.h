#pragma once

#include "core/desk/sterilizer_log.h"
#include "ui/paper/kit/pages.h"
#include "ui/paper/sheets/house.h"

namespace loadwarden::paper {

/// A sterilizer's day: every cycle in order with its times, purpose, result and signature, and what
/// was recorded of the sterilizer itself.
[[nodiscard]] Pages daySheet(const SterilizerLog& log, const House& house);

} // namespace loadwarden::paper
