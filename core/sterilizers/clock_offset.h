#pragma once

#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <vector>

namespace loadwarden {

/// The offset valid at a time that the sterilizer's clock showed: of the entries whose `from` is
/// not after it the newest, the later in the list where two are as new. None: unknown.
[[nodiscard]] std::optional<Duration> offsetAt(const std::vector<ClockOffset>& offsets,
                                               Instant shown);

} // namespace loadwarden
