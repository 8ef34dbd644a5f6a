#pragma once

#include "core/indicators/indicator.h"

#include <memory_resource>
#include <vector>

namespace loadwarden {

/// Every entry behind a positive cycle: the growth readings of its vials or, where there is none,
/// their unclear readings and the declarations that they cannot be settled.
[[nodiscard]] inline std::pmr::vector<const Act*> positiveActs(const std::vector<Vial>& vials,
                                                               std::pmr::memory_resource* memory)
{
    std::pmr::vector<const Act*> acts(memory);
    const auto take = [&acts](const std::vector<IndicatorReading>& readings, Seen seen) {
        for (const IndicatorReading& reading : readings) {
            if (reading.seen == seen) {
                acts.push_back(&reading.act);
            }
        }
    };
    for (const Vial& vial : vials) {
        take(vial.readings, Seen::growth);
    }
    if (!acts.empty()) {
        return acts;
    }
    for (const Vial& vial : vials) {
        take(vial.readings, Seen::unclear);
        if (vial.unsettled) {
            acts.push_back(&*vial.unsettled);
        }
    }
    return acts;
}

} // namespace loadwarden
