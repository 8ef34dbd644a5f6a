#pragma once

#include "core/guidance/topic.h"
#include "core/quantities/zone.h"
#include "core/release/decision.h"
#include "core/release/policy.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// What the rules say of a topic's small evidence.
struct CaseAnswer {
    const TopicCase* topicCase = nullptr;
    Instant asOf{};
    Zone zone = *Zone::find("UTC"); ///< of the evidence's facility
    std::variant<Decision, TestJudgement> decision;
    std::string result; ///< of the item, load or test that the case asks about, as JSON calls it
    std::vector<Finding> findings; ///< those whose keys the case names
    std::string differs; ///< how this differs from what the topic expects; empty: not at all
};

/// What was decided of that which the case asks about.
[[nodiscard]] std::variant<Verdict, TestResult> decidedOn(const CaseAnswer& answer);

/// Decides on the evidence by a policy, at the evidence's `decideAt`. A text says why it cannot be
/// decided on: it cannot be read, or states no moment. `topicCase` must outlive the answer.
[[nodiscard]] std::variant<CaseAnswer, std::string>
answerCase(const TopicCase& topicCase, std::string_view evidence, const Policy& policy);

} // namespace loadwarden
