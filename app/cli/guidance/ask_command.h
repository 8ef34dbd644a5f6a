#pragma once

#include "app/cli/streams.h"

#include <span>
#include <string_view>

namespace loadwarden::cli {

/// "ask": a question from the floor to the guidance, a topic by its id, the list of topics, the
/// calculator of survivors.
int ask(std::span<const std::string_view> arguments, Streams streams);

} // namespace loadwarden::cli
