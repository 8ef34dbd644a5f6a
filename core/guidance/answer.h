#pragma once

#include "core/guidance/assurance.h"
#include "core/guidance/case_answer.h"
#include "core/guidance/topic_library.h"

#include <string>
#include <vector>

namespace loadwarden {

/// A row of a topic's calculator, computed.
struct CalculationAnswer {
    std::string tells;
    Assurance assurance;
};

/// A topic as it is shown: its text with what the rules decide and the calculator computes today.
struct TopicAnswer {
    const Topic* topic = nullptr;
    const TopicNote* note = nullptr; ///< of the house; nullptr: none
    std::vector<CaseAnswer> cases;
    std::vector<CalculationAnswer> calculations;
    bool isOverdue = false; ///< its day of review is over
    /// The policy in force decides a case otherwise than the topic's text says: then the decision
    /// is right, and the text is not to be followed where it differs.
    bool policyDiffers = false;
};

/// `today` is the facility's day. Valid as long as the library.
[[nodiscard]] TopicAnswer answerTopic(const TopicLibrary& library, const Topic& topic,
                                      const Policy& policy, Date today);

} // namespace loadwarden
