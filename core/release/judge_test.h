#pragma once

#include "core/release/decision.h"
#include "core/release/evidence.h"
#include "core/release/finding_sink.h"
#include "core/release/policy.h"

#include <memory_resource>
#include <optional>
#include <span>
#include <vector>

namespace loadwarden {

/// What a test cycle came to, for the rules that depend on it.
struct TestOutcome {
    TestResult result = TestResult::pending;
    /// When the first of its failures was known, positive biological indicators apart.
    std::optional<Instant> failedSince;
    Cause voidedBy =
        Cause::none; ///< the first in the order of RULES.md, 4a, that voids a Bowie-Dick
};

/// The other cycles of the sterilizer that a test is judged beside.
struct TestSurroundings {
    std::span<const HistoryCycle> cycles;
    std::span<const CycleTimes> times;
    std::span<const ControlState> controlStates; ///< as in BiologicalSettings
};

/// Judges a test cycle (RULES.md, 7). Writes reasons to `sink` where it is not null and the acts
/// behind a failure to `failureActs` where that is not null.
[[nodiscard]] TestOutcome judgeTestCycle(const HistoryCycle& cycle, const CycleTimes& times,
                                         const TestSurroundings& around,
                                         const IndicatorRegister& known, const Policy& policy,
                                         Instant now, FindingSink* sink,
                                         std::pmr::vector<const Act*>* failureActs);

} // namespace loadwarden
