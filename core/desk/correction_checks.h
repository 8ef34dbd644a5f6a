#pragma once

#include "core/desk/refusal.h"
#include "core/desk/to_record.h"
#include "core/store/read_snapshot.h"

#include <optional>

namespace loadwarden {

/// Why a correction is none, or would have no effect (core/acts/ACTS.md, 5); nullopt where it has.
/// What it would do is asked of the fold itself.
[[nodiscard]] std::optional<Refusal> checkCorrection(ReadSnapshot& snapshot, const ToRecord& act,
                                                     const Author& author);

} // namespace loadwarden
