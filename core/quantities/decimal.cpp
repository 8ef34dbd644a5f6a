#include "core/quantities/decimal.h"

#include <algorithm>
#include <cstddef>

namespace loadwarden {

namespace {

constexpr std::int64_t mostScaled = 1'000'000'000'000'000;
constexpr std::int64_t mostDigits = 16; // of mostScaled

constexpr bool isDigit(char c) noexcept
{
    return c >= '0' && c <= '9';
}

std::size_t countDigits(std::string_view text) noexcept
{
    std::size_t n = 0;
    while (n < text.size() && isDigit(text[n])) {
        ++n;
    }
    return n;
}

struct Parts {
    bool negative = false;
    std::string_view whole;    ///< digits before the point, at least one
    std::string_view fraction; ///< digits after it, perhaps none
    std::int64_t exponent = 0;
};

/// The exponent with its sign. Longer texts than can be held would need more digits to matter than
/// a text can have, so they stay at a limit.
std::optional<std::int64_t> readExponent(std::string_view text) noexcept
{
    constexpr std::int64_t limit = 1'000'000'000'000'000'000;
    const bool negative = !text.empty() && text.front() == '-';
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
        text.remove_prefix(1);
    }
    if (text.empty() || countDigits(text) != text.size()) {
        return std::nullopt;
    }
    std::int64_t value = 0;
    for (const char c : text) {
        value = value >= limit / 10 ? limit : value * 10 + (c - '0');
    }
    return negative ? -value : value;
}

std::optional<Parts> split(std::string_view text) noexcept
{
    Parts parts;
    if (!text.empty() && text.front() == '-') {
        parts.negative = true;
        text.remove_prefix(1);
    }
    parts.whole = text.substr(0, countDigits(text));
    if (parts.whole.empty() || (parts.whole.size() > 1 && parts.whole.front() == '0')) {
        return std::nullopt;
    }
    text.remove_prefix(parts.whole.size());
    if (!text.empty() && text.front() == '.') {
        text.remove_prefix(1);
        parts.fraction = text.substr(0, countDigits(text));
        if (parts.fraction.empty()) {
            return std::nullopt;
        }
        text.remove_prefix(parts.fraction.size());
    }
    if (text.empty()) {
        return parts;
    }
    if (text.front() != 'e' && text.front() != 'E') {
        return std::nullopt;
    }
    const std::optional<std::int64_t> exponent = readExponent(text.substr(1));
    if (!exponent) {
        return std::nullopt;
    }
    parts.exponent = *exponent;
    return parts;
}

/// The digits of a number without the zeros at either end: value = digits · 10^power.
struct Significand {
    std::int64_t digits = 0;
    std::int64_t count = 0;
    std::int64_t power = 0;
    bool tooLong = false;

    void push(char c) noexcept
    {
        if (c == '0') {
            ++power;
            return;
        }
        // Zeros put off so far stand between digits, unless none came before.
        const std::int64_t zeros = count == 0 ? 0 : power;
        if (count + zeros + 1 > mostDigits) {
            tooLong = true;
            return;
        }
        for (std::int64_t i = 0; i < zeros; ++i) {
            digits *= 10;
        }
        digits = digits * 10 + (c - '0');
        count += zeros + 1;
        power = 0;
    }
};

} // namespace

std::optional<std::int64_t> parseDecimal(std::string_view text, int decimals) noexcept
{
    const std::optional<Parts> parts = split(text);
    if (!parts) {
        return std::nullopt;
    }
    Significand number;
    std::ranges::for_each(parts->whole, [&](char c) { number.push(c); });
    std::ranges::for_each(parts->fraction, [&](char c) { number.push(c); });
    if (number.tooLong) {
        return std::nullopt; // either too large or with too many decimals, whatever the exponent
    }
    if (number.count == 0) {
        return 0;
    }
    const std::int64_t power = number.power + parts->exponent
                               - static_cast<std::int64_t>(parts->fraction.size()) + decimals;
    if (power < 0 || power > mostDigits - number.count) {
        return std::nullopt;
    }
    std::int64_t value = number.digits;
    for (std::int64_t i = 0; i < power; ++i) {
        value *= 10;
    }
    if (value > mostScaled) {
        return std::nullopt;
    }
    return parts->negative ? -value : value;
}

} // namespace loadwarden
