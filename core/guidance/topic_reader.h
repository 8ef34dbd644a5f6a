#pragma once

#include "core/exchange/toml_error.h"
#include "core/guidance/topic.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// The topic that a file states, or everything that is wrong with it by itself, by line: what other
/// files have to say to it (related topics, evidence) is looked at by TopicLibrary. The file must
/// be called by the topic's id, `fileName` "en/front-on-boundary.toml"; the form is described in
/// resources/guidance/README.md.
std::variant<Topic, std::vector<TomlError>> readTopic(std::string_view toml,
                                                      const std::string& fileName);

/// The same of a facility's note to a topic of the program: "en/front-on-boundary.note.toml".
std::variant<TopicNote, std::vector<TomlError>> readTopicNote(std::string_view toml,
                                                              const std::string& fileName);

} // namespace loadwarden
