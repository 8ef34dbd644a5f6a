#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace loadwarden {

/// A word by which files and journal write a value. Words are public: never renamed, never reused.
template <class Value>
struct Word {
    std::string_view text;
    Value value{};
};

/// The value of a word in a table of words.
template <class Table>
[[nodiscard]] constexpr auto valueOf(const Table& table, std::string_view text)
    -> std::optional<decltype(std::begin(table)->value)>
{
    for (const auto& word : table) {
        if (word.text == text) {
            return word.value;
        }
    }
    return std::nullopt;
}

/// The word of a value; empty where the table has none for it.
template <class Table, class Value>
[[nodiscard]] constexpr std::string_view wordOf(const Table& table, const Value& value)
{
    for (const auto& word : table) {
        if (word.value == value) {
            return word.text;
        }
    }
    return {};
}

} // namespace loadwarden
