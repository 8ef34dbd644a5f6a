#pragma once

#include "app/cli/commands.h"

#include <span>
#include <string_view>

namespace loadwarden::cli {

/// Runs the one of the commands that the arguments (without the program's name) ask for and answers
/// its exit code. Whatever is thrown on the way is said on `err`.
int run(std::span<const std::string_view> arguments, std::span<const Command> commands,
        Streams streams) noexcept;

} // namespace loadwarden::cli
