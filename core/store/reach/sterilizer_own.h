#pragma once

#include "core/acts/entry.h"

#include <cstdint>
#include <map>
#include <memory>
#include <set>
#include <string>
#include <vector>

namespace loadwarden {

/// What a sterilizer's own entries say that decides which of its cycles are in reach of one
/// (core/acts/ACTS.md, 6), corrected entries included.
struct SterilizerOwn {
    std::int64_t clockWidth = 0; ///< twice the most by which its clock was said to be wrong, ms
    std::set<std::string> inIncidents;        ///< ld-
    std::map<std::string, bool> harmlessCode; ///< alarms that were classed: never as affecting
};

[[nodiscard]] SterilizerOwn sterilizerOwn(const std::vector<std::shared_ptr<const Entry>>& entries);

} // namespace loadwarden
