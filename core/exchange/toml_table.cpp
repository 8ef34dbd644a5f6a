#include "core/exchange/toml_table.h"

#include "core/quantities/thousandths.h"
#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace loadwarden {

namespace {

constexpr std::array<std::string_view, 5> confidences = {"seen", "restated", "memory",
                                                         "common-practice", "facility"};

constexpr std::size_t mostSource = 1000;

bool isBlank(std::string_view text)
{
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

} // namespace

std::string textOf(const TomlError& error)
{
    std::string text =
        shown(error.file) + (error.line == 0 ? "" : ":" + std::to_string(error.line)) + ": ";
    if (!error.field.empty()) {
        text += shown(error.field) + ": ";
    }
    return text + shown(error.message);
}

void TomlErrors::add(int line, std::string field, std::string message)
{
    m_errors.push_back({m_file, std::max(line, 1), std::move(field), std::move(message)});
}

void TomlErrors::add(const toml::node& where, std::string field, std::string message)
{
    add(static_cast<int>(where.source().begin.line), std::move(field), std::move(message));
}

std::vector<TomlError> TomlErrors::sorted() &&
{
    std::stable_sort(m_errors.begin(), m_errors.end(),
                     [](const TomlError& a, const TomlError& b) { return a.line < b.line; });
    return std::move(m_errors);
}

int lineOf(std::string_view toml, std::string_view key)
{
    const toml::table table = toml::parse(toml);
    const toml::node* const node = table.get(key);
    return node == nullptr ? 1 : static_cast<int>(node->source().begin.line);
}

std::optional<toml::table> parseToml(std::string_view text, TomlErrors& errors)
{
    try {
        return toml::parse(text);
    } catch (const toml::parse_error& error) {
        errors.add(static_cast<int>(error.source().begin.line), "",
                   "column " + std::to_string(error.source().begin.column)
                       + ": cannot be read as TOML; a line is a [table] or a key = value, a text "
                         "stands in quotation marks, and nothing stands twice (the parser says: "
                       + std::string(error.description()) + ")");
        return std::nullopt;
    }
}

std::optional<std::int64_t> thousandthsOf(const toml::node& number, int decimals)
{
    constexpr std::int64_t most = 1'000'000'000;
    if (const auto* whole = number.as_integer()) {
        const std::int64_t value = whole->get();
        return value >= -most && value <= most ? std::optional(value * 1000) : std::nullopt;
    }
    const auto* floating = number.as_floating_point();
    if (floating == nullptr || !std::isfinite(floating->get())
        || std::fabs(floating->get()) > static_cast<double>(most)) {
        return std::nullopt;
    }
    const std::int64_t scale = decimals == 0 ? 1 : decimals == 1 ? 10 : decimals == 2 ? 100 : 1000;
    const std::int64_t scaled = std::llround(floating->get() * static_cast<double>(scale));
    // The nearest double of the decimal is what the parser made of it, so equality is exact.
    if (static_cast<double>(scaled) / static_cast<double>(scale) != floating->get()) {
        return std::nullopt;
    }
    return scaled * (1000 / scale);
}

std::string listed(std::span<const std::string_view> words)
{
    std::string text;
    for (const std::string_view word : words) {
        text += text.empty() ? "" : ", ";
        text += word;
    }
    return text;
}

std::string TomlTable::fieldOf(std::string_view key) const
{
    if (m_field.empty() || key.empty()) {
        return m_field + std::string(key);
    }
    return m_field + "." + std::string(key);
}

const toml::node* TomlTable::required(std::string_view key)
{
    const toml::node* node = optional(key);
    if (node == nullptr) {
        wrong(key, "is missing");
    }
    return node;
}

const toml::node* TomlTable::optional(std::string_view key)
{
    m_asked.push_back(key);
    return m_table->get(key);
}

std::optional<std::string> TomlTable::text(std::string_view key, std::size_t most)
{
    const toml::node* node = required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto* string = node->as_string();
    if (string == nullptr) {
        wrong(*node, key, "must be a text in quotes");
        return std::nullopt;
    }
    if (isBlank(string->get())) {
        wrong(*node, key, "must not be empty");
        return std::nullopt;
    }
    if (utf8::characterCount(string->get()) > most) {
        wrong(*node, key, "is longer than " + std::to_string(most) + " characters");
        return std::nullopt;
    }
    return string->get();
}

std::optional<std::string> TomlTable::name(std::string_view key, std::size_t most)
{
    std::optional<std::string> name = text(key, most);
    if (const auto unseen = findUnseen(name.value_or(""))) {
        wrong(*m_table->get(key), key, unseenText(*unseen));
        return std::nullopt;
    }
    return name;
}

std::optional<std::int64_t> TomlTable::whole(std::string_view key, std::int64_t least,
                                             std::int64_t most)
{
    const toml::node* node = required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto* number = node->as_integer();
    if (number == nullptr || number->get() < least || number->get() > most) {
        wrong(*node, key,
              "must be a whole number from " + std::to_string(least) + " to "
                  + std::to_string(most));
        return std::nullopt;
    }
    return number->get();
}

std::optional<std::size_t> TomlTable::word(std::string_view key,
                                           std::span<const std::string_view> words)
{
    const toml::node* node = required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto* string = node->as_string();
    const auto found = string == nullptr
                           ? words.end()
                           : std::find(words.begin(), words.end(), std::string_view(string->get()));
    if (found == words.end()) {
        wrong(*node, key, "must be one of: " + listed(words));
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - words.begin());
}

std::optional<bool> TomlTable::flag(std::string_view key)
{
    const toml::node* node = required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto* boolean = node->as_boolean();
    if (boolean == nullptr) {
        wrong(*node, key, "must be false or true");
        return std::nullopt;
    }
    return boolean->get();
}

std::optional<TomlTable> TomlTable::table(std::string_view key)
{
    const toml::node* node = required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    const auto* inner = node->as_table();
    if (inner == nullptr) {
        wrong(*node, key, "must be a table");
        return std::nullopt;
    }
    return TomlTable(*inner, fieldOf(key), *m_errors);
}

void TomlTable::provenance()
{
    text("source", mostSource);
    word("confidence", confidences);
}

void TomlTable::wrong(const toml::node& where, std::string_view key, std::string message)
{
    m_errors->add(where, fieldOf(key), std::move(message));
}

void TomlTable::wrong(std::string_view key, std::string message)
{
    m_errors->add(*m_table, fieldOf(key), std::move(message));
}

void TomlTable::finish()
{
    for (auto&& [key, node] : *m_table) {
        if (std::find(m_asked.begin(), m_asked.end(), key.str()) == m_asked.end()) {
            m_errors->add(static_cast<int>(key.source().begin.line), fieldOf(key.str()),
                          "is not known here");
        }
    }
}

} // namespace loadwarden
