#pragma once

#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"

#include <string>
#include <vector>

namespace loadwarden::cli {

/// What is said to a question.
struct AskReply {
    std::string question;                ///< empty: the topic was asked for by its id
    const TopicAnswer* answer = nullptr; ///< nullptr: none fits well enough
    std::vector<const Topic*> next; ///< the nearest others, or all that there is to choose from
};

[[nodiscard]] std::string plainReply(const AskReply& reply, const TopicLibrary& library);
[[nodiscard]] std::string jsonReply(const AskReply& reply, const Policy& policy);

[[nodiscard]] std::string plainList(const std::vector<const Topic*>& topics);
[[nodiscard]] std::string jsonList(const std::vector<const Topic*>& topics);

/// A row of the calculator.
[[nodiscard]] std::string plainAssurance(const Assurance& assurance);
[[nodiscard]] std::string jsonAssurance(const Assurance& assurance);

} // namespace loadwarden::cli
