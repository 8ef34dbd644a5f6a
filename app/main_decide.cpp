#include "app/cli/command_line.h"

#include <iostream>
#include <string_view>
#include <vector>

int main(int argc, char** argv)
{
    std::ios::sync_with_stdio(false);
    std::cin.tie(nullptr);
    const std::vector<std::string_view> arguments(argv + (argc > 0 ? 1 : 0), argv + argc);
    return loadwarden::cli::run(arguments, loadwarden::cli::decidingCommands(),
                                {std::cin, std::cout, std::cerr});
}
