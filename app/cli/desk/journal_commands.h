#pragma once

#include "app/cli/commands.h"

#include <span>
#include <string_view>

/// The subcommands that work on a journal's file, each in a file of its own, as in commands.h.
namespace loadwarden::cli {

int backup(std::span<const std::string_view> arguments, Streams streams);
int bi(std::span<const std::string_view> arguments, Streams streams);
int tray(std::span<const std::string_view> arguments, Streams streams);
int entry(std::span<const std::string_view> arguments, Streams streams);
int exportEvidence(std::span<const std::string_view> arguments, Streams streams);
int importFile(std::span<const std::string_view> arguments, Streams streams);
int init(std::span<const std::string_view> arguments, Streams streams);
int journal(std::span<const std::string_view> arguments, Streams streams);
int load(std::span<const std::string_view> arguments, Streams streams);
int productLot(std::span<const std::string_view> arguments, Streams streams);
int readOne(std::span<const std::string_view> arguments, Streams streams);
int record(std::span<const std::string_view> arguments, Streams streams);
int report(std::span<const std::string_view> arguments, Streams streams);
int restore(std::span<const std::string_view> arguments, Streams streams);
int specification(std::span<const std::string_view> arguments, Streams streams);
int staff(std::span<const std::string_view> arguments, Streams streams);
int sterilizer(std::span<const std::string_view> arguments, Streams streams);
int test(std::span<const std::string_view> arguments, Streams streams);
int verify(std::span<const std::string_view> arguments, Streams streams);

/// All of them.
[[nodiscard]] std::span<const Command> journalCommands();

} // namespace loadwarden::cli
