#pragma once

#include "core/acts/fold/facts.h"
#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace loadwarden {

/// Whether a sterilizer is in service, as said last.
struct ServiceNow {
    ServiceState state = ServiceState::outOfService;
    std::string why;              ///< it is not; empty: it was never returned
    std::optional<Instant> since; ///< recorded; nullopt: nothing was ever said
};

/// After those entries about it, in order.
[[nodiscard]] ServiceNow serviceAfter(std::span<const Entry> entries);

/// The same from the facts of several sterilizers.
[[nodiscard]] ServiceNow serviceIn(const FactBook& book, std::string_view sterilizer);

} // namespace loadwarden
