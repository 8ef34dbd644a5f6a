#pragma once

#include "core/release/finding.h"

#include <cstdint>
#include <vector>

namespace loadwarden {

/// Where what a finding asks for is recorded.
enum class SheetPart : std::uint8_t {
    cycle,       ///< start, end, alarms
    contents,    ///< items and what is known of them
    printout,    ///< the sterilizer's record, its readings, their verification
    trace,       ///< the sterilizer's own recording
    indicators,  ///< chemical indicators, in PCDs and items
    biologicals, ///< vials and controls
    packages,    ///< what was seen at unloading
    aeration,
    immediateUse,
    test,       ///< conditions and readings of a test cycle
    sterilizer, ///< outside this cycle: its tests, repairs, register
    history     ///< entries to be corrected or reviewed
};

[[nodiscard]] SheetPart partOf(const Finding& finding);

/// Whether a finding says something of a cycle that has not ended yet: what is only still to come
/// is no reason.
[[nodiscard]] bool isKnownBeforeTheEnd(const Finding& finding);

/// Whether the items of what is decided are still to aerate, or do: nobody takes one out to look at
/// it meanwhile.
[[nodiscard]] bool isBeforeAerationsEnd(const std::vector<Finding>& findings);

/// Whether a finding only asks for what is looked at when items are taken out.
[[nodiscard]] bool isForUnloading(const Finding& finding);

} // namespace loadwarden
