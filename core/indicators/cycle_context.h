#pragma once

#include "core/quantities/date.h"
#include "core/quantities/instant.h"
#include "core/quantities/method.h"

#include <optional>
#include <string_view>

namespace loadwarden {

/// What an indicator must know of the cycle in which it was. Times are corrected to the facility's
/// clock. Views must outlive it.
struct CycleContext {
    std::optional<Date> day; ///< facility day of the start
    std::optional<Instant> end;
    Method method = Method::unknown;
    std::string_view cycleType; ///< empty: unknown
    std::string_view lot;       ///< empty: unknown
    bool asksCycleType = true;  ///< false where a product's cycle types do not matter
};

} // namespace loadwarden
