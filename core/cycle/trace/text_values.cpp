#include "core/cycle/trace/text_values.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>

namespace loadwarden {
namespace {

constexpr bool isDigit(char c) noexcept
{
    return c >= '0' && c <= '9';
}

constexpr char lower(char c) noexcept
{
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool isWord(std::string_view text, std::string_view word) noexcept
{
    return std::ranges::equal(text, word, {}, lower);
}

std::optional<double> readPlain(const char* begin, const char* end) noexcept
{
    double value = 0;
    const auto [stop, error] = std::from_chars(begin, end, value);
    if (error != std::errc{} || stop != end || !std::isfinite(value)) {
        return std::nullopt;
    }
    return value;
}

} // namespace

std::optional<double> readNumber(std::string_view text, DecimalMark mark) noexcept
{
    if (text.starts_with('+')) {
        text.remove_prefix(1);
        if (text.starts_with('-')) {
            return std::nullopt;
        }
    }
    // from_chars also knows words: "inf", "nan".
    const std::size_t first = text.starts_with('-') ? 1 : 0;
    if (text.size() <= first || (!isDigit(text[first]) && text[first] != charOf(mark))) {
        return std::nullopt;
    }
    if (mark == DecimalMark::point) {
        return readPlain(text.data(), text.data() + text.size());
    }
    std::array<char, 64> plain{};
    if (text.size() > plain.size()) {
        return std::nullopt;
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '.') {
            return std::nullopt;
        }
        plain[i] = text[i] == ',' ? '.' : text[i];
    }
    return readPlain(plain.data(), plain.data() + text.size());
}

bool saysNoValue(std::string_view text) noexcept
{
    if (std::ranges::all_of(text, [](char c) { return c == '-' || c == ' '; })) {
        return true;
    }
    return isWord(text, "nan") || isWord(text, "n/a") || isWord(text, "na") || isWord(text, "null");
}

} // namespace loadwarden
