#pragma once

#include "core/exchange/toml_error.h"
#include "core/guidance/guidance_files.h"
#include "core/guidance/topic.h"

#include <variant>
#include <vector>

namespace loadwarden {

/// The topic that a file states, or everything that is wrong with it by itself, by line: what other
/// files have to say to it (related topics, evidence) is looked at by TopicLibrary. The file's
/// place must be of the topic's language and id, "en/front-on-boundary.toml"; the form is described
/// in resources/guidance/README.md.
std::variant<Topic, std::vector<TomlError>> readTopic(const GuidanceFile& file);

/// The same of a facility's note to a topic of the program: "en/front-on-boundary.note.toml".
std::variant<TopicNote, std::vector<TomlError>> readTopicNote(const GuidanceFile& file);

} // namespace loadwarden
