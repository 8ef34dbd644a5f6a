#pragma once

#include "core/store/reach/labels_of_cycles.h"
#include "core/store/reach/mark_windows.h"
#include "core/store/reach/sterilizer_own.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <functional>
#include <map>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

// How far the evidence of a cycle reaches (core/acts/ACTS.md, 6), in milliseconds and in numbers.

inline constexpr std::int64_t hourMs = 3'600'000;
inline constexpr std::int64_t dayMs = 24 * hourMs;
/// Cycles beside it: what ran at the same time has a time as near, or ran longer than twice this.
inline constexpr std::int64_t besideMs = 3 * hourMs;
/// Tests, cycles whose times are doubtful, and loads with one of its labels.
inline constexpr std::int64_t nearMs = 2 * dayMs;
/// Biological indicators: weekly is the least frequent that is usual.
inline constexpr std::int64_t vialsMs = 10 * dayMs;
inline constexpr std::size_t vialCycles = 6;
/// Failures that were not put right.
inline constexpr std::int64_t troubleMs = 400 * dayMs;
/// Bowie-Dick tests next to it, and after a failure of one was resolved.
inline constexpr std::size_t nextTests = 3;
inline constexpr std::size_t testsAfterFailure = 5;
/// Cycles with the next counters.
inline constexpr std::size_t nextCounters = 3;

/// A revision of a specification by which cycles were begun, with the least values that it counts
/// as: for each parameter and unit readings below `thousandths` are low.
struct LeastValue {
    std::string bound; ///< as in p_reading
    std::string_view parameter;
    std::string_view unit;
    std::int64_t thousandths = 0;
};

/// Finds the other cycles of its sterilizers on which the evidence of one cycle can rest, from what
/// entries up to one of them say.
class CyclesInReach {
public:
    /// What else is asked of the entries themselves; both are called with a sterilizer's id.
    struct Ask {
        std::function<const SterilizerOwn&(const std::string&)> own;
        std::function<std::span<const LeastValue>(const std::string&)> leastValues;
    };

    /// The snapshot, and what `ask` refers to, outlive it.
    CyclesInReach(ReadSnapshot& snapshot, std::int64_t upTo, Ask ask);

    struct Found {
        std::set<std::string> sterilizers; ///< sz-, every one that was said
        std::set<std::string> cycles;      ///< ld-, without the cycle itself
    };

    /// `counters`: further ones that are said to be the cycle's.
    [[nodiscard]] Found of(std::string_view cycle, const std::set<std::int64_t>& counters);

private:
    class OfSterilizer;

    ReadSnapshot& m_snapshot;
    std::int64_t m_upTo;
    Ask m_ask;
    MarkWindows m_marks;
    LabelsOfCycles m_labels;
    std::map<std::string, std::set<std::int64_t>> m_resolutions; ///< by cycle, when recorded
};

} // namespace loadwarden
