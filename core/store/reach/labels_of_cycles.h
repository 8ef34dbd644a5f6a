#pragma once

#include "core/store/read_snapshot.h"

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loadwarden {

/// The labels that items were said to have in cycles, as they are compared. What was found for one
/// cycle is kept for the next, which is mostly near the same others. Of one snapshot, as of one
/// entry.
class LabelsOfCycles {
public:
    /// The snapshot outlives this.
    LabelsOfCycles(ReadSnapshot& snapshot, std::int64_t upTo) : m_snapshot(snapshot), m_upTo(upTo)
    {
    }

    /// Finds those of some cycles.
    void find(std::span<const std::string> cycles);

    /// Whether two cycles, which have been looked for, have one in common.
    [[nodiscard]] bool share(const std::string& a, const std::string& b) const;

private:
    ReadSnapshot& m_snapshot;
    std::int64_t m_upTo;
    std::unordered_map<std::string, std::vector<std::string>> m_labels; ///< sorted, by cycle
};

} // namespace loadwarden
