#pragma once

#include <map>
#include <optional>
#include <span>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::cli {

/// The command line asks for what there is not; what() is a plain sentence.
class UsageError : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

struct Option {
    std::string_view name; ///< with its dashes
    bool takesValue = false;
};

/// The arguments of a subcommand: options ("--at TIME", "--at=TIME", "--json") in any place, and
/// what is left. After "--" nothing is an option; "-" never is one.
class Arguments {
public:
    /// Throws UsageError for an unknown option, one given twice, and a value missing or too much.
    Arguments(std::span<const std::string_view> arguments, std::span<const Option> known);

    [[nodiscard]] bool has(std::string_view option) const { return m_values.contains(option); }
    [[nodiscard]] std::optional<std::string_view> value(std::string_view option) const;
    /// The same of one that has to be there; throws UsageError.
    [[nodiscard]] std::string needed(std::string_view option) const;
    [[nodiscard]] const std::vector<std::string_view>& rest() const { return m_rest; }

private:
    std::map<std::string_view, std::string_view> m_values;
    std::vector<std::string_view> m_rest;
};

} // namespace loadwarden::cli
