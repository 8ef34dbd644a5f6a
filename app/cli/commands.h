#pragma once

#include "app/cli/streams.h"

#include <span>
#include <string>
#include <string_view>

/// The subcommands, each in a file of its own. Each takes the arguments after its name and answers
/// the exit code; it throws UsageError for arguments it does not know.
namespace loadwarden::cli {

int decide(std::span<const std::string_view> arguments, Streams streams);
int policy(std::span<const std::string_view> arguments, Streams streams);
int schema(std::span<const std::string_view> arguments, Streams streams);
int specifications(std::span<const std::string_view> arguments, Streams streams);

/// A word behind the program's name and what it runs.
struct Command {
    std::string_view name;
    int (*run)(std::span<const std::string_view>, Streams);
};

/// Those that decide on files of evidence and need no journal.
[[nodiscard]] std::span<const Command> decidingCommands();

std::string helpText();
std::string versionText();

} // namespace loadwarden::cli
