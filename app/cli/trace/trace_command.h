#pragma once

#include "app/cli/streams.h"

#include <span>
#include <string_view>

namespace loadwarden::cli {

/// What sterilizers' recorders wrote: evaluated by a specification, proposed how to read,
/// simulated, attached to a load. As in commands.h.
int trace(std::span<const std::string_view> arguments, Streams streams);

// Behind `trace`.
int evaluateTraces(std::span<const std::string_view> arguments, Streams streams);
int proposeTraceMapping(std::span<const std::string_view> arguments, Streams streams);
int simulateTrace(std::span<const std::string_view> arguments, Streams streams);
int attachTrace(std::span<const std::string_view> arguments, Streams streams);

} // namespace loadwarden::cli
