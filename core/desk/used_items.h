#pragma once

#include "core/store/read_snapshot.h"

#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden {

/// An item that was used and that nobody has released, by the newest disposition of its load.
struct UnreleasedUse {
    std::string item;          ///< it-
    std::string label;         ///< as last written
    std::string lot;           ///< of its load
    std::string caseReference; ///< of the use
    std::int64_t seq = 0;      ///< the entry that says that it was used
};

/// Those of a load, in the order in which they were recorded.
[[nodiscard]] std::vector<UnreleasedUse> unreleasedUses(ReadSnapshot& snapshot,
                                                        const std::string& cycle);

} // namespace loadwarden
