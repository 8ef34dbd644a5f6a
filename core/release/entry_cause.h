#pragma once

#include "core/indicators/cause.h"
#include "core/quantities/act.h"

#include <optional>

namespace loadwarden {

/// Why an entry about a cycle does not count by its act (RULES.md, 4a); none: it does. Where the
/// end is not known, nothing is early.
[[nodiscard]] inline Cause causeOf(const Act& act, const std::optional<Instant>& end, Instant now)
{
    if (!isSigned(act)) {
        return Cause::unsignedAct;
    }
    if (!hasPossibleTimes(act, now)) {
        return Cause::timesImpossible;
    }
    return end && !isFromEndOn(act.happenedAt, *end) ? Cause::readEarly : Cause::none;
}

/// The act of two that was recorded last; `last` may be null, of equals it is the later one,
/// `next`.
[[nodiscard]] inline const Act* lastRecorded(const Act* last, const Act& next)
{
    return last == nullptr || next.recordedAt >= last->recordedAt ? &next : last;
}

} // namespace loadwarden
