#pragma once

#include "core/release/decision.h"
#include "core/release/policy.h"

#include <functional>
#include <string>

namespace loadwarden {

/// What is said of a finding in sentences; what is empty is not written.
struct FindingText {
    std::string says;   ///< what it is
    std::string next;   ///< what to do next
    std::string source; ///< where the rule comes from
};

/// Finds the sentences of a finding; an empty function: none are written.
using FindingSay = std::function<FindingText(const Finding&)>;

/// What was decided by, which a decision names so that it can be made again.
struct DecisionBasis {
    Instant asOf; ///< the moment for which it was asked
    const Policy& policy;
};

/// Appends one line of JSON, with its line feed, as resources/schema/decision.schema.json describes
/// it. Text is written as UTF-8; bytes that are no UTF-8 become U+FFFD.
void appendDecision(std::string& out, const Decision& decision, const DecisionBasis& basis,
                    const FindingSay& say = {});

/// The same for a test cycle.
void appendJudgement(std::string& out, const TestJudgement& judgement, const DecisionBasis& basis,
                     const FindingSay& say = {});

} // namespace loadwarden
