#pragma once

#include "core/quantities/date.h"
#include "core/quantities/instant.h"

#include <cstdint>
#include <optional>

namespace loadwarden {

/// When a cycle ran, by the facility's clock as far as the sterilizer's offset is known.
struct CycleTimes {
    std::optional<Instant> start;
    std::optional<Instant> end;
    std::optional<std::int64_t> counter;
    std::optional<Date> day;    ///< facility day of the start
    std::optional<Date> period; ///< local date whose test hour began the start's test period
    /// Of the history: another cycle of it has the same counter, or a smaller one and a later
    /// start.
    bool contradicted = false;
    bool offsetUnknown = false; ///< shown by the sterilizer's clock, whose offset is not known

    /// The end, or the start where there is none.
    [[nodiscard]] std::optional<Instant> endForOrder() const { return end ? end : start; }
};

/// Whether cycle a ended before cycle b began (RULES.md, 2): by counter where both have one, else
/// by the clock, ending in the minute in which the next begins being before.
[[nodiscard]] bool isBefore(const CycleTimes& a, const CycleTimes& b);

/// Whether two cycles ran at the same time by the clock, whatever their counters say.
[[nodiscard]] bool overlap(const CycleTimes& a, const CycleTimes& b);

/// Whether the counters of two cycles say another order than their starts, or are the same.
[[nodiscard]] bool countersDisagree(const CycleTimes& a, const CycleTimes& b);

} // namespace loadwarden
