#pragma once

#include "core/desk/load_view.h"
#include "core/quantities/zone.h"

#include <functional>
#include <string>
#include <vector>

namespace loadwarden {

/// A load or test in which an indicator of a lot was, as it is decided now.
struct LoadWithLot {
    std::string cycle; ///< ld-
    std::string lot;   ///< its control number
    Instant at{};      ///< when it began, or was reserved
    std::optional<Verdict> signedAs;
    std::optional<Verdict> decided; ///< of a load
    bool isWorse = false;           ///< it, or an item of it, was signed better than is decided now
};

/// Every load and test with an indicator of one of these lots (pl-), the newest first, each decided
/// anew: so a recall shows what it reaches. It reads the whole journal where it must;
/// `goesOn` is asked between pieces and ends it with what was found. Throws StoreError.
[[nodiscard]] std::vector<LoadWithLot> loadsWithLots(ReadSnapshot& snapshot, EntryCache& cache,
                                                     const Zone& zone,
                                                     const std::vector<std::string>& lots,
                                                     Instant now,
                                                     const std::function<bool()>& goesOn = {});

} // namespace loadwarden
