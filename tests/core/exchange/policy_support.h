#pragma once

#include "core/exchange/policy_reader.h"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

/// The default policy's file, and copies of it with one thing changed.
namespace loadwarden::testing {

/// Its first occurrence replaced; throws where there is none, so that no test passes by a typo.
inline std::string replaced(std::string text, std::string_view what, std::string_view with)
{
    const std::size_t at = text.find(what);
    if (at == std::string::npos) {
        throw std::invalid_argument("not in the text: " + std::string(what));
    }
    return text.replace(at, what.size(), with);
}

/// The line, from 1, on which a text stands for the first time.
inline int lineOf(std::string_view text, std::string_view what)
{
    const std::string_view before = text.substr(0, text.find(what));
    return 1 + static_cast<int>(std::count(before.begin(), before.end(), '\n'));
}

/// "[leak.test_minutes]\nvalue = " and the value that stands there.
inline std::string headOf(std::string_view setting)
{
    return "[" + std::string(setting) + "]\nvalue = ";
}

/// The default policy under an id of its own.
inline std::string copyText()
{
    return replaced(std::string(defaultPolicyText()), "id = \"us-hospital\"", "id = \"copy\"");
}

/// The same with another value for one setting.
inline std::string withValue(std::string_view setting, std::string_view value)
{
    std::string text = copyText();
    const std::string head = headOf(setting);
    const std::size_t at = text.find(head);
    if (at == std::string::npos) {
        throw std::invalid_argument("no such setting: " + std::string(setting));
    }
    const std::size_t begin = at + head.size();
    return text.replace(begin, text.find('\n', begin) - begin, value);
}

inline int valueLineOf(std::string_view text, std::string_view setting)
{
    return lineOf(text, "[" + std::string(setting) + "]") + 1;
}

inline std::vector<PolicyError> errorsOf(std::string_view text)
{
    auto read = readPolicy(text, "policy.toml");
    auto* errors = std::get_if<std::vector<PolicyError>>(&read);
    return errors == nullptr ? std::vector<PolicyError>{} : std::move(*errors);
}

} // namespace loadwarden::testing
