#pragma once

#include "app/cli/commands.h"

namespace loadwarden::cli {

/// "paper KIND …": a sheet as a PDF file. The only command that paints, in a library of its own.
int paper(std::span<const std::string_view> arguments, Streams streams);

} // namespace loadwarden::cli
