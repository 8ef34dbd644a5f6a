#pragma once

#include "core/desk/refusal.h"
#include "core/desk/to_record.h"
#include "core/store/read_snapshot.h"

#include <optional>
#include <span>

namespace loadwarden {

/// Why acts would leave the staff as they must not be: one badge is one person and reads as nobody
/// else's id or name, and somebody can still sign as a supervisor. nullopt where they do not. What
/// is looked at is the staff after all of the acts, corrections included.
[[nodiscard]] std::optional<Refusal>
checkStaff(ReadSnapshot& snapshot, std::span<const ToRecord> acts, const Author& author);

} // namespace loadwarden
