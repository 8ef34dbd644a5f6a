#pragma once

#include "core/acts/entry.h"
#include "core/store/read_snapshot.h"

#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::cli {

/// Something in a cycle with a short name for people: i1, i2 for items, c1 for chemical indicators,
/// v1 for vials, d1 for process challenge devices, r1 for aeration runs, in the order in which they
/// were recorded, so that a name never changes.
struct Part {
    std::string name;
    std::string id;
    std::string what; ///< a label, a mark, a place, a product, in words; may be empty
    std::string left; ///< how it left the cycle, in words; empty: it is in it
};

[[nodiscard]] std::vector<Part> partsOf(ReadSnapshot& snapshot, const std::string& cycle);

/// The id of a part by its short name, its id or an item's label; empty where there is none, or
/// more than one.
[[nodiscard]] std::string findPart(const std::vector<Part>& parts, std::string_view name);

} // namespace loadwarden::cli
