#pragma once

#include "core/acts/fold/folding.h"
#include "core/quantities/pressure.h"
#include "core/quantities/zone.h"

#include <optional>

namespace loadwarden {

/// What the newest record of the facility says, or, before there is one, the journal's opening.
struct Facility {
    Zone zone = *Zone::find("UTC");
    std::optional<AbsolutePressure> atmosphere;
};

[[nodiscard]] Facility foldFacility(Folding& folding);

} // namespace loadwarden
