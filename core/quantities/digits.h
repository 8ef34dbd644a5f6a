#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loadwarden::digits {

/// The number that `count` decimal digits at `pos` say, or -1 when they are not all there.
constexpr int read(std::string_view text, std::size_t pos, std::size_t count) noexcept
{
    if (pos > text.size() || text.size() - pos < count) {
        return -1;
    }
    int value = 0;
    for (const char c : text.substr(pos, count)) {
        if (c < '0' || c > '9') {
            return -1;
        }
        value = value * 10 + (c - '0');
    }
    return value;
}

/// Appends `value` (not negative) with leading zeros to `width` digits.
inline void append(std::string& out, unsigned value, std::size_t width)
{
    const std::string plain = std::to_string(value);
    if (plain.size() < width) {
        out.append(width - plain.size(), '0');
    }
    out += plain;
}

} // namespace loadwarden::digits
