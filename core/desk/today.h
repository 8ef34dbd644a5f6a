#pragma once

#include "core/desk/needs.h"
#include "core/desk/sterilizer_day.h"
#include "core/quantities/date.h"
#include "core/store/read_snapshot.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What the department looks at first: what needs somebody, and its sterilizers' day.
struct Today {
    Instant now{};
    Date day{}; ///< of the facility
    Instant dayBegin{};
    Instant dayEnd{};
    std::vector<Need> needs; ///< the most urgent first
    std::vector<SterilizerDay> sterilizers;
    std::int64_t loadsToday = 0;         ///< that have started on this day
    std::int64_t signedToday = 0;        ///< of those, signed
    bool hasSpecification = false;       ///< any cycle specification is registered
    std::optional<Instant> nextChangeAt; ///< when time alone changes anything of this, later than
                                         ///< now
};

/// How far back somebody is asked about what was recorded after a disposition, and about lots that
/// have expired: what is older is found by looking for it.
inline constexpr Duration lookBack = Duration::hours(35 * 24);

/// Lots are named that long before they expire.
inline constexpr Duration lotWarning = Duration::hours(14 * 24);

/// What stands in the journal now. Throws StoreError.
[[nodiscard]] Today todayOf(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone,
                            Instant now);

} // namespace loadwarden
