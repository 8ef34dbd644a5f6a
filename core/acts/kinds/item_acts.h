#pragma once

#include "core/acts/kinds/values.h"
#include "core/loads/item.h"
#include "core/quantities/date.h"

#include <optional>
#include <string>
#include <vector>

// Items: in and out of loads, their packages, where they go (ACTS.md, 4).

namespace loadwarden {

struct ItemAdded {
    std::string label;
    Implant implant = Implant::unknown;
    std::string packaging; ///< pk-; empty: not stated
    std::optional<Date> packagingExpires;
    bool internalVisible = false;
    std::vector<std::string> devices; ///< dv-
    std::optional<PlacedIndicator> external;
    std::vector<PlacedIndicator> internals;
    PeroxideFacts peroxide;
};

struct ItemMoved {
    std::string from; ///< ld-
    std::string to;   ///< ld-
    std::string why;
};

struct ItemRemoved {
    std::string why;
};

struct ItemConfirmed {};

/// What was not looked at is left out.
struct PackageChecked {
    std::optional<bool> cooled;
    std::optional<bool> dry;
    std::optional<bool> intact;
    std::optional<bool> sealed;
    std::optional<bool> labelAgrees;
};

struct PackageCheckLost {};

struct ItemDistributed {
    std::string to;
};

struct ItemUsed {
    std::string caseReference;
};

struct ItemReturned {
    std::string why;
};

} // namespace loadwarden
