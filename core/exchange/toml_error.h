#pragma once

#include <string>

namespace loadwarden {

/// What is wrong at one place of a TOML file.
struct TomlError {
    std::string file;
    int line = 1;      ///< from 1; of what is missing: where it should have stood; 0: the file is
                       ///< there but could not be read
    std::string field; ///< dotted, for example "leak.test_minutes.value"; empty: the file as such
    std::string message;

    friend bool operator==(const TomlError&, const TomlError&) = default;
};

/// "file:line: field: message".
[[nodiscard]] std::string textOf(const TomlError& error);

} // namespace loadwarden
