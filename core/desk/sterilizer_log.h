#pragma once

#include "core/desk/load_view.h"
#include "core/desk/names.h"
#include "core/journal/chain.h"
#include "core/quantities/date.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

struct LoggedCycle {
    CycleView view;
    std::optional<Entry> disposition; ///< the newest that was signed
};

/// A facility day of a sterilizer as it stood at a moment.
struct SterilizerLog {
    std::string sterilizer; ///< sz-
    Date day{};
    Instant now{};
    ServiceState service = ServiceState::outOfService; ///< at the end of the day, or now
    std::vector<LoggedCycle> cycles; ///< that began on it, in the order of their starts
    std::vector<Entry> own; ///< what was recorded on it of the sterilizer itself, with corrections
    Names names;
    Head head; ///< the newest entry that was seen
};

/// As of entry `upTo`. Throws StoreError.
[[nodiscard]] SterilizerLog logOfSterilizer(ReadSnapshot& snapshot, EntryCache& cache,
                                            const Zone& zone, const std::string& sterilizer,
                                            Date day, Instant now, std::int64_t upTo = toTheEnd);

} // namespace loadwarden
