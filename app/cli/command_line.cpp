#include "app/cli/command_line.h"

#include "app/cli/arguments.h"
#include "app/cli/commands.h"
#include "app/cli/refused.h"

#include <algorithm>
#include <array>
#include <exception>
#include <new>
#include <ostream>
#include <string>

namespace loadwarden::cli {

namespace {

int dispatch(std::span<const std::string_view> arguments, std::span<const Command> commands,
             Streams streams)
{
    if (arguments.empty()) {
        throw UsageError("no command is named");
    }
    const auto asks = [&](std::string_view option) {
        const auto end = std::find(arguments.begin(), arguments.end(), "--");
        return std::find(arguments.begin(), end, option) != end;
    };
    if (asks("--help") || asks("-h")) {
        streams.out << helpText();
        return exitDone;
    }
    const std::string_view name = arguments.front();
    if (name == "--version" && arguments.size() == 1) {
        streams.out << versionText();
        return exitDone;
    }
    const auto command = std::ranges::find(commands, name, &Command::name);
    if (command == commands.end()) {
        throw UsageError((name.starts_with('-') ? "there is no option " : "there is no command ")
                         + std::string(name));
    }
    return command->run(arguments.subspan(1), streams);
}

int runAndFlush(std::span<const std::string_view> arguments, std::span<const Command> commands,
                Streams streams)
{
    const int code = dispatch(arguments, commands, streams);
    streams.out.flush();
    if (!streams.out) {
        throw std::runtime_error("the output could not be written");
    }
    return code;
}

} // namespace

std::span<const Command> decidingCommands()
{
    static constexpr std::array commands = {Command{"decide", decide}, Command{"policy", policy},
                                            Command{"schema", schema},
                                            Command{"specifications", specifications}};
    return commands;
}

int run(std::span<const std::string_view> arguments, std::span<const Command> commands,
        Streams streams) noexcept
{
    try {
        try {
            return runAndFlush(arguments, commands, streams);
        } catch (const UsageError& error) {
            streams.err << "loadwarden-cli: " << error.what()
                        << "\nloadwarden-cli --help says how to use it.\n";
        } catch (const Refused& refused) {
            streams.err << "Refused; nothing was recorded. " << refused.what() << '\n';
            streams.err.flush();
            return exitRefused;
        } catch (const std::bad_alloc&) {
            streams.err << "loadwarden-cli: not enough memory\n";
        } catch (const std::exception& error) {
            streams.err << "loadwarden-cli: " << error.what() << '\n';
        }
        streams.err.flush();
    } catch (...) {
        // Not even the error could be written; the exit code still says it.
    }
    return exitBad;
}

} // namespace loadwarden::cli
