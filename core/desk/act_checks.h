#pragma once

#include "core/desk/office.h"

#include <optional>
#include <span>

namespace loadwarden {

/// Why acts do not fit what stands in the journal; nullopt where they do. Asked is what a person
/// can put right at once: ids that are not there or are there already, things that are not in the
/// cycle, a cycle that has not started or has ended, times that have not come, corrections of what
/// is not current. What the evidence then means is the decision's matter. Each act is looked at as
/// if those before it were recorded.
/// Each is one that can be an entry (Office::whyNoEntries()).
[[nodiscard]] std::optional<Refusal> checkActs(ReadSnapshot& snapshot,
                                               std::span<const ToRecord> acts, const Author& author,
                                               Instant now);

} // namespace loadwarden
