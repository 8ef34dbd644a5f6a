#include "core/sterilizers/clock_offset.h"

namespace loadwarden {

std::optional<Duration> offsetAt(const std::vector<ClockOffset>& offsets, Instant shown)
{
    const ClockOffset* newest = nullptr;
    for (const ClockOffset& entry : offsets) {
        if (entry.from <= shown && (newest == nullptr || entry.from >= newest->from)) {
            newest = &entry;
        }
    }
    return newest == nullptr ? std::nullopt : std::optional(newest->offset);
}

} // namespace loadwarden
