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

// On a journal's file (app/cli/desk/).
int backup(std::span<const std::string_view> arguments, Streams streams);
int bi(std::span<const std::string_view> arguments, Streams streams);
int entry(std::span<const std::string_view> arguments, Streams streams);
int exportEvidence(std::span<const std::string_view> arguments, Streams streams);
int init(std::span<const std::string_view> arguments, Streams streams);
int journal(std::span<const std::string_view> arguments, Streams streams);
int load(std::span<const std::string_view> arguments, Streams streams);
int record(std::span<const std::string_view> arguments, Streams streams);
int restore(std::span<const std::string_view> arguments, Streams streams);
int specification(std::span<const std::string_view> arguments, Streams streams);
int staff(std::span<const std::string_view> arguments, Streams streams);
int sterilizer(std::span<const std::string_view> arguments, Streams streams);
int test(std::span<const std::string_view> arguments, Streams streams);
int verify(std::span<const std::string_view> arguments, Streams streams);

std::string helpText();
std::string versionText();

} // namespace loadwarden::cli
