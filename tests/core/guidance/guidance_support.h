#pragma once

#include "core/guidance/topic_library.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::testing {

/// The files of resources/guidance as they are now, which may be newer than those built in.
[[nodiscard]] std::vector<GuidanceFile> guidanceFiles();

/// A library of them; throws with the first error.
[[nodiscard]] const TopicLibrary& shippedTopics();

/// The file of that place; throws where there is none.
[[nodiscard]] GuidanceFile fileAt(const std::string& place);

/// Its first occurrence replaced; throws where there is none, so that no test passes by a typo.
[[nodiscard]] std::string replaced(std::string text, std::string_view what, std::string_view with);

/// The line, from 1, on which a text stands for the first time; throws where it does not.
[[nodiscard]] int lineOf(std::string_view text, std::string_view what);

/// A topic of a facility that reads well; `id` is also its file's name.
[[nodiscard]] std::string houseTopic(const std::string& id);

/// What is wrong with the topics of a facility when these files are added to the program's.
[[nodiscard]] std::vector<TomlError> errorsOf(const std::vector<GuidanceFile>& files);

/// A question and the id of the topic that answers it.
struct AskedQuestion {
    std::string topic;
    std::string question;
};
[[nodiscard]] std::vector<AskedQuestion> questionsOf(const std::string& pathBelowRoot);

} // namespace loadwarden::testing
