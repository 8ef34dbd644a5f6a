#include "core/guidance/toml_lists.h"

#include "core/quantities/unseen.h"
#include "core/quantities/utf8.h"

#include <algorithm>

namespace loadwarden {

namespace {

/// On one line, without blanks at its ends.
std::string onOneLine(std::string_view text)
{
    std::string line;
    for (const char c : text) {
        const bool blank = c == ' ' || c == '\t' || c == '\n' || c == '\r';
        if (!blank) {
            line += c;
        } else if (!line.empty() && line.back() != ' ') {
            line += ' ';
        }
    }
    if (!line.empty() && line.back() == ' ') {
        line.pop_back();
    }
    return line;
}

/// What is wrong with a text; empty: nothing.
std::string wrongWith(const toml::node& node, std::size_t mostCharacters)
{
    const auto* text = node.as_string();
    if (text == nullptr) {
        return "must be a text in quotes";
    }
    if (onOneLine(text->get()).empty()) {
        return "must not be empty";
    }
    if (utf8::characterCount(text->get()) > mostCharacters) {
        return "is longer than " + std::to_string(mostCharacters) + " characters";
    }
    if (const auto control = findControl(text->get())) {
        return unseenText(*control);
    }
    return "";
}

} // namespace

std::optional<std::string> prose(TomlTable& table, std::string_view key, std::size_t most)
{
    const toml::node* node = table.required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    if (std::string wrong = wrongWith(*node, most); !wrong.empty()) {
        table.wrong(*node, key, std::move(wrong));
        return std::nullopt;
    }
    return onOneLine(node->as_string()->get());
}

std::vector<PlacedText> proseList(TomlTable& table, std::string_view key, const ListBounds& bounds,
                                  TomlErrors& errors)
{
    const toml::node* node = table.required(key);
    if (node == nullptr) {
        return {};
    }
    const auto* list = node->as_array();
    if (list == nullptr || list->size() < bounds.least || list->size() > bounds.most) {
        table.wrong(*node, key,
                    "must be a list of " + std::to_string(bounds.least) + " to "
                        + std::to_string(bounds.most) + " texts in square brackets");
        return {};
    }
    std::vector<PlacedText> texts;
    for (std::size_t i = 0; i < list->size(); ++i) {
        const toml::node& element = *list->get(i);
        const std::string field = table.fieldOf(key) + "[" + std::to_string(i + 1) + "]";
        if (std::string wrong = wrongWith(element, bounds.mostCharacters); !wrong.empty()) {
            errors.add(element, field, std::move(wrong));
            continue;
        }
        PlacedText text{onOneLine(element.as_string()->get()),
                        static_cast<int>(element.source().begin.line)};
        if (std::ranges::find(texts, text.text, &PlacedText::text) != texts.end()) {
            errors.add(element, field, "stands in this list already");
            continue;
        }
        texts.push_back(std::move(text));
    }
    return texts;
}

std::optional<Date> dateOf(TomlTable& table, std::string_view key)
{
    const toml::node* node = table.required(key);
    if (node == nullptr) {
        return std::nullopt;
    }
    std::optional<Date> date;
    if (const auto* written = node->as_date()) {
        const toml::date day = written->get();
        const auto twoDigits = [](unsigned number) {
            return (number < 10 ? "-0" : "-") + std::to_string(number);
        };
        date = parseDate(std::to_string(day.year) + twoDigits(day.month) + twoDigits(day.day));
    }
    if (!date) {
        table.wrong(*node, key,
                    "must be a day of the years 2000 to 2099, without quotes, as 2032-03-31");
    }
    return date;
}

std::vector<TomlTable> tablesOf(TomlTable& table, std::string_view key, TomlErrors& errors)
{
    const toml::node* node = table.optional(key);
    if (node == nullptr) {
        return {};
    }
    const auto* list = node->as_array();
    if (list == nullptr || !list->is_array_of_tables()) {
        table.wrong(*node, key, "must be a list of tables: [[" + std::string(key) + "]]");
        return {};
    }
    std::vector<TomlTable> tables;
    for (std::size_t i = 0; i < list->size(); ++i) {
        tables.emplace_back(*list->get(i)->as_table(),
                            table.fieldOf(key) + "[" + std::to_string(i + 1) + "]", errors);
    }
    return tables;
}

int lineOf(TomlTable& table, std::string_view key)
{
    const toml::node* node = table.optional(key);
    return node == nullptr ? 1 : static_cast<int>(node->source().begin.line);
}

} // namespace loadwarden
