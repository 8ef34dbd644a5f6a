#pragma once

#include "core/release/decision.h"
#include "core/release/evidence.h"
#include "core/release/policy.h"
#include "core/release/rule_table.h"

namespace loadwarden {

/// Decides on a load (RULES.md): a verdict for it and for each item, every reason, and when time
/// alone will change it. Pure and total: the same evidence, policy and moment give the same answer,
/// and there is an answer for any evidence. The evidence must be of a load, not of a test.
[[nodiscard]] Decision decide(const Evidence& evidence, const Policy& policy, Instant now);

/// The same with another table of rules; for showing that each rule is needed.
[[nodiscard]] Decision decideWith(const RuleTable& rules, const Evidence& evidence,
                                  const Policy& policy, Instant now);

/// Judges the evidence of a test cycle; `evidence.record.test` must be set.
[[nodiscard]] TestJudgement judgeTest(const Evidence& evidence, const Policy& policy, Instant now);

} // namespace loadwarden
