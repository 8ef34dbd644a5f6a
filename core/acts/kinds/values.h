#pragma once

#include "core/cycle/quantity.h"

#include <cstdint>
#include <string>

// Values that stand in several acts (ACTS.md, 1).

namespace loadwarden {

/// A number as it was typed, and the same in thousandths of the unit that its member names.
struct TypedNumber {
    std::string typed;
    std::int64_t thousandths = 0;
};

/// A value as it was typed, in its unit.
struct TypedQuantity {
    std::string typed;
    Quantity value;
};

/// An indicator as it is put into a PCD or an item.
struct PlacedIndicator {
    std::string id;      ///< ci- or bv-
    std::string product; ///< pr-; empty: not known
    std::string lot;     ///< pl-; empty: not known
    std::string place;   ///< where in the package; empty: not stated
};

} // namespace loadwarden
