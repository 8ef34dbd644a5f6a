#pragma once

#include "app/cli/arguments.h"
#include "app/cli/streams.h"
#include "core/guidance/topic_library.h"
#include "core/release/policy.h"

#include <optional>
#include <string>

namespace loadwarden::cli {

/// The files that --policy and --topics name, for whoever shows topics.

/// The default policy where none is named; nullopt: it is wrong, and all that is has been said.
[[nodiscard]] std::optional<Policy> policyGiven(const Arguments& given, Streams streams);

/// The program's topics and those of the folder that is named; nullopt as above.
[[nodiscard]] std::optional<TopicLibrary> topicsGiven(const Arguments& given, Streams streams);

/// --language, else English.
[[nodiscard]] std::string languageGiven(const Arguments& given);

/// The topic of that id; throws UsageError where there is none.
[[nodiscard]] const Topic& topicNamed(const TopicLibrary& library, const std::string& id,
                                      const std::string& language);

} // namespace loadwarden::cli
