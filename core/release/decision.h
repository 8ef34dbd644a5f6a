#pragma once

#include "core/release/finding.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What may be done with a load or an item, from best to worst.
enum class Verdict : std::uint8_t { release, quarantine, reprocess };

[[nodiscard]] std::string_view textOf(Verdict verdict);

struct ItemDecision {
    std::string label;
    Verdict verdict = Verdict::quarantine; ///< never better than the load's
};

/// What `decide` says of a load. Findings of the load come first, then those of each item in turn.
struct Decision {
    std::string lot; ///< empty: the load has none
    Verdict verdict = Verdict::quarantine;
    std::vector<Finding> findings;
    std::vector<ItemDecision> items;
    std::optional<Instant> nextChangeAt; ///< later than now
};

/// Whether the load and every item may be released.
[[nodiscard]] bool allMayGo(const Decision& decision);

/// What a test cycle showed, in the order in which it is decided.
enum class TestResult : std::uint8_t { failed, voided, pending, passed };

[[nodiscard]] std::string_view textOf(TestResult result);

/// What `judgeTest` says of a test cycle, with its reasons.
struct TestJudgement {
    std::string lot;
    TestResult result = TestResult::pending;
    std::vector<Finding> findings;
};

} // namespace loadwarden
