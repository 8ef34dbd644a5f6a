#pragma once

#include "core/indicators/cause.h"
#include "core/quantities/act.h"

#include <optional>

namespace loadwarden {

/// Why an entry about an ended cycle does not count (RULES.md, 4a); none: its act does not stand
/// against it.
[[nodiscard]] inline Cause causeOf(const Act& act, const std::optional<Instant>& end, Instant now)
{
    if (!isSigned(act)) {
        return Cause::unsignedAct;
    }
    if (!stands(act, now)) {
        return Cause::timesImpossible;
    }
    return !end || !isFromEndOn(act.happenedAt, *end) ? Cause::readEarly : Cause::none;
}

} // namespace loadwarden
