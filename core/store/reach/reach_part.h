#pragma once

#include "core/acts/entry.h"

#include <cstdint>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace loadwarden {

using SharedEntries = std::vector<std::shared_ptr<const Entry>>;

/// Entries that are in reach together, and what they lead to.
struct ReachPart {
    SharedEntries entries;              ///< in the order of seq
    std::vector<std::string> named;     ///< what they name in registers, each once
    std::vector<std::int64_t> amends;   ///< seqs that amendments among them name
    std::set<std::string> cycles;       ///< beside an item or an indicator
    std::vector<PlacedIndicator> vials; ///< that they place, with a lot
    std::vector<std::pair<std::string, std::int64_t>> incubated; ///< a vial, ms
};

/// Whether an id is of an item, a chemical indicator or a vial, with which a cycle's entries come
/// into reach.
[[nodiscard]] bool isThing(std::string_view id);

/// Entries in any order. Works out what they lead to.
[[nodiscard]] ReachPart reachPart(SharedEntries entries);

} // namespace loadwarden
