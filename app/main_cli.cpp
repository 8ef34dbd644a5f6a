#include "app/cli/command_line.h"
#include "app/cli/desk/journal_commands.h"
#include "app/cli/guidance/ask_command.h"
#include "app/cli/paper/paper_command.h"
#include "app/cli/trace/trace_command.h"

#include <iostream>
#include <string_view>
#include <vector>

int main(int argc, char** argv)
{
    std::ios::sync_with_stdio(false);
    std::cin.tie(nullptr);
    const std::vector<std::string_view> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    using namespace loadwarden::cli;
    std::vector<Command> commands(decidingCommands().begin(), decidingCommands().end());
    commands.insert(commands.end(), journalCommands().begin(), journalCommands().end());
    commands.push_back({"paper", paper});
    commands.push_back({"trace", trace});
    commands.push_back({"ask", ask});
    return run(arguments, commands, {std::cin, std::cout, std::cerr});
}
