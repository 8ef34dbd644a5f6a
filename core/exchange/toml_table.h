#pragma once

#include "core/exchange/toml_error.h"

#include <toml++/toml.h>

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Collects what is wrong in one file, so that all of it can be said at once.
class TomlErrors {
public:
    explicit TomlErrors(std::string fileName) : m_file(std::move(fileName)) {}

    void add(int line, std::string field, std::string message);
    void add(const toml::node& where, std::string field, std::string message);

    [[nodiscard]] bool empty() const { return m_errors.empty(); }

    /// By line; within a line in the order in which they were added.
    [[nodiscard]] std::vector<TomlError> sorted() &&;

private:
    std::string m_file;
    std::vector<TomlError> m_errors;
};

/// nullopt when the text is no TOML, which is then said in `errors`.
std::optional<toml::table> parseToml(std::string_view text, TomlErrors& errors);

/// The line, from 1, on which the value of a key of the root stands in a text that is TOML.
int lineOf(std::string_view toml, std::string_view key);

/// A number in thousandths, exactly; nullopt when it is no number, has more than `decimals` (0 to
/// 3) decimals, or lies beyond a thousand million.
std::optional<std::int64_t> thousandthsOf(const toml::node& number, int decimals);

/// "a", "a, b": what may stand somewhere.
std::string listed(std::span<const std::string_view> words);

/// One table of a file while it is read. Every question that cannot be answered as wanted adds an
/// error; `finish` adds one for each key that nobody asked for.
class TomlTable {
public:
    TomlTable(const toml::table& table, std::string field, TomlErrors& errors)
        : m_table(&table), m_field(std::move(field)), m_errors(&errors)
    {
    }

    [[nodiscard]] bool has(std::string_view key) const { return m_table->contains(key); }
    [[nodiscard]] std::string fieldOf(std::string_view key) const;

    /// The node, and an error where there is none.
    const toml::node* required(std::string_view key);
    /// The node, or nullptr without an error.
    const toml::node* optional(std::string_view key);

    // Each of these asks for a required key.
    std::optional<std::string> text(std::string_view key, std::size_t most);
    /// A text without characters that nobody sees.
    std::optional<std::string> name(std::string_view key, std::size_t most);
    std::optional<std::int64_t> whole(std::string_view key, std::int64_t least, std::int64_t most);
    std::optional<std::size_t> word(std::string_view key, std::span<const std::string_view> words);
    std::optional<bool> flag(std::string_view key);
    std::optional<TomlTable> table(std::string_view key);

    /// `source` (not blank) and `confidence` (one of the closed list).
    void provenance();

    /// An empty key means the table itself.
    void wrong(const toml::node& where, std::string_view key, std::string message);
    void wrong(std::string_view key, std::string message);
    void finish();

private:
    const toml::table* m_table;
    std::string m_field;
    TomlErrors* m_errors;
    std::vector<std::string_view> m_asked;
};

} // namespace loadwarden
