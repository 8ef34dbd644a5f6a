#pragma once

#include "core/desk/sterilizer_day.h"
#include "core/store/read_snapshot.h"
#include "core/store/reach/entry_cache.h"
#include "core/quantities/zone.h"

#include <string>
#include <vector>

namespace loadwarden {

/// A cycle that somebody may work on now.
struct CycleAtHand {
    DayCycle cycle;
    std::string sterilizerName;
};

/// What a cycle at hand waits for.
enum class AtHand : std::uint8_t {
    atWork,    ///< it is being loaded, or runs
    undecided, ///< it has ended and is not signed, is held, or is decided worse since; a test
               ///< without a result
    done
};

/// Whether a load is signed better than what is decided now.
[[nodiscard]] bool isWorseNow(const DayCycle& cycle);

[[nodiscard]] AtHand waitsFor(const DayCycle& cycle);

/// Cycles that are not done, as far as lookBack goes for those that are signed, and those of the
/// facility day, as decided for `now`: what is at work first, then what is undecided, then what is
/// done, each the newest first. At most some hundreds of each. Throws StoreError.
[[nodiscard]] std::vector<CycleAtHand> cyclesAtHand(ReadSnapshot& snapshot, EntryCache& cache,
                                                    const Zone& zone, Instant now);

} // namespace loadwarden
