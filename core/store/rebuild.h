#pragma once

#include "core/store/connection.h"
#include "core/store/journal_index.h"
#include "core/store/progress.h"

#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden {

/// A row of an index table that is there and should not be, or the other way round.
struct IndexDifference {
    std::string table;
    std::string row;      ///< its columns, in words
    bool missing = false; ///< it should be there

    friend bool operator==(const IndexDifference&, const IndexDifference&) = default;
};

struct RebuildReport {
    std::int64_t entries = 0;
    std::vector<IndexDifference> differences; ///< the first hundred of each table
    std::int64_t differenceCount = 0;
    bool cancelled = false; ///< nothing was changed
};

enum class Rebuild : std::uint8_t {
    compare, ///< changes nothing
    replace  ///< leaves the tables as the entries say
};

/// Fills p_subject, p_head, the tables of ActIndexes and of the further indexes anew from the
/// entries, and says in which rows they differed. In one transaction: nobody else writes meanwhile.
/// The entries are to be verified first; one that cannot be read as an entry throws
/// StoreFault::damaged.
[[nodiscard]] RebuildReport rebuildIndexes(Connection& connection,
                                           const std::vector<JournalIndex*>& further, Rebuild mode,
                                           Progress& progress);

} // namespace loadwarden
