#include "app/cli/arguments.h"

#include <algorithm>

namespace loadwarden::cli {

Arguments::Arguments(std::span<const std::string_view> arguments, std::span<const Option> known)
{
    bool optionsEnded = false;
    for (std::size_t i = 0; i < arguments.size(); ++i) {
        const std::string_view argument = arguments[i];
        if (optionsEnded || argument == "-" || !argument.starts_with('-')) {
            m_rest.push_back(argument);
            continue;
        }
        if (argument == "--") {
            optionsEnded = true;
            continue;
        }
        const std::size_t equals = argument.find('=');
        const std::string_view name = argument.substr(0, equals);
        const auto option = std::find_if(known.begin(), known.end(),
                                         [&](const Option& o) { return o.name == name; });
        if (option == known.end()) {
            throw UsageError("there is no option " + std::string(name) + " here");
        }
        std::string_view value;
        if (equals != std::string_view::npos) {
            if (!option->takesValue) {
                throw UsageError(std::string(name) + " takes no value");
            }
            value = argument.substr(equals + 1);
        } else if (option->takesValue) {
            if (++i == arguments.size()) {
                throw UsageError(std::string(name) + " needs a value after it");
            }
            value = arguments[i];
        }
        if (!m_values.emplace(option->name, value).second) {
            throw UsageError(std::string(name) + " is given twice");
        }
    }
}

std::optional<std::string_view> Arguments::value(std::string_view option) const
{
    const auto found = m_values.find(option);
    return found == m_values.end() ? std::nullopt : std::optional(found->second);
}

std::string Arguments::needed(std::string_view option) const
{
    const auto found = value(option);
    if (!found) {
        throw UsageError("this needs " + std::string(option));
    }
    return std::string(*found);
}

} // namespace loadwarden::cli
