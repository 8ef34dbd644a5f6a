#pragma once

#include "tests/core/acts/journal_support.h"

#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace loadwarden::tests {

/// What a drawn department does.
struct WeeksOptions {
    int days = 14;
    int sterilizers = 2;
    int loadsADay = 3;    ///< of each sterilizer, at most
    bool oddities = true; ///< also times that contradict, labels that come back, acts of viewers
};

/// Weeks of a department by chance: tests, loads, positives with incidents, failures with and
/// without a resolution, moved items, controls, corrections. One seed gives one journal.
[[nodiscard]] Journal weeks(std::uint64_t seed, const WeeksOptions& options = {});

/// Every cycle that was reserved, in order.
[[nodiscard]] std::vector<std::string> cyclesIn(const std::vector<Entry>& entries);

} // namespace loadwarden::tests
