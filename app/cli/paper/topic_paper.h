#pragma once

#include "app/cli/arguments.h"
#include "app/cli/streams.h"

#include <array>
#include <string_view>

namespace loadwarden::cli {

/// The kinds of paper about a topic of guidance, which need no journal.
inline constexpr std::array<std::string_view, 2> topicPapers = {"answer-card", "in-service"};

/// "paper answer-card TOPIC …": by the default policy, or --policy, of the program's topics and
/// those in --topics.
int topicPaper(const Arguments& given, Streams streams);

} // namespace loadwarden::cli
