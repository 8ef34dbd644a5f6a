#pragma once

#include "core/desk/load_view.h"
#include "core/desk/names.h"
#include "core/journal/chain.h"

#include <optional>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Everything that a record of a load or a test on paper rests on.
struct CycleRecord {
    CycleView view;
    std::vector<Entry> entries; ///< about the cycle and about the controls beside its vials, in
                                ///< order, none newer than view.seen
    Names names;                ///< of what they name, other cycles by their lot control numbers
    Head head;                  ///< the newest entry of the journal that was seen
};

/// nullopt where nothing was recorded of the cycle up to entry `upTo`. Throws StoreError.
[[nodiscard]] std::optional<CycleRecord> recordOfCycle(ReadSnapshot& snapshot, EntryCache& cache,
                                                       std::string_view cycle, Instant now,
                                                       std::int64_t upTo = toTheEnd);

/// The entry up to which something was seen, with its hash. Throws StoreError.
[[nodiscard]] Head headAt(ReadSnapshot& snapshot, std::int64_t seq);

} // namespace loadwarden
