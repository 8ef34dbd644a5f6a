#pragma once

#include "core/exchange/toml_table.h"
#include "core/quantities/date.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// How many of something may stand in a list, and how long a text in it may be, in characters.
struct ListBounds {
    std::size_t least;
    std::size_t most;
    std::size_t mostCharacters;
};

/// A text of a list and where it stands.
struct PlacedText {
    std::string text;
    int line = 1;
};

/// A text of one or more lines, which become one: blanks at the ends go, those inside count as one.
/// Control characters other than tab and line feed are wrong.
std::optional<std::string> prose(TomlTable& table, std::string_view key, std::size_t most);

/// The texts of a required list, each as `prose` would read it. A text that stands twice is wrong.
std::vector<PlacedText> proseList(TomlTable& table, std::string_view key, const ListBounds& bounds,
                                  TomlErrors& errors);

/// A required date, written as a date: 2032-03-31.
std::optional<Date> dateOf(TomlTable& table, std::string_view key);

/// The tables of a list of tables: [[key]]. None where the key is not there.
std::vector<TomlTable> tablesOf(TomlTable& table, std::string_view key, TomlErrors& errors);

/// The line on which a key's value stands; 1 where it is not there.
int lineOf(TomlTable& table, std::string_view key);

} // namespace loadwarden
