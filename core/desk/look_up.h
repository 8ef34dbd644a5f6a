#pragma once

#include "core/store/read_snapshot.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What somebody scanned or typed, as the journal knows it.
struct LookedUp {
    enum class What : std::uint8_t {
        nothing,
        person,     ///< id: st-; by badge or id, never by name
        cycle,      ///< id: ld-; by lot control number or id
        item,       ///< id: it-, cycle: the newest load in which it was said to be; by label
        productLot, ///< id: pl-; by a maker's lot number
        several     ///< more than one thing bears it
    };

    What what = What::nothing;
    std::string id;
    std::string cycle; ///< of a cycle its id, too
    std::string name;  ///< for people: a name, a lot control number, a label as written
};

/// Looks for a text as a scanner sends it. A badge goes before everything else, then a cycle, then
/// a label, then a lot of a product. Throws StoreError.
[[nodiscard]] LookedUp lookUp(ReadSnapshot& snapshot, std::string_view text);

/// Items by their label, each in each load in which it was ever said to be, the newest load first.
/// Throws StoreError.
[[nodiscard]] std::vector<LookedUp> lookUpItems(ReadSnapshot& snapshot, std::string_view label);

/// The lots of products that bear a maker's number now, pl-; blanks and the case of A to Z do not
/// matter. Throws StoreError.
[[nodiscard]] std::vector<std::string> productLotsNumbered(ReadSnapshot& snapshot,
                                                           std::string_view number);

} // namespace loadwarden
