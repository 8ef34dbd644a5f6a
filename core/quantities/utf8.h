#pragma once

#include <algorithm>
#include <cstddef>
#include <string_view>

namespace loadwarden::utf8 {

/// Whether a byte is not the first one of its character.
constexpr bool isContinuation(unsigned char byte) noexcept
{
    return (byte & 0xC0U) == 0x80U;
}

/// Bytes of the well-formed character (Unicode, table 3-7) at the start of a text; 0: there is
/// none.
[[nodiscard]] std::size_t characterLength(std::string_view text) noexcept;

/// A character and how many bytes it takes.
struct Character {
    char32_t code;
    std::size_t bytes;
};

/// What stands for bytes that are no character.
inline constexpr char32_t replacement = 0xFFFD;

/// The first character of a text that is not empty; a byte that starts none is a replacement.
[[nodiscard]] Character characterAt(std::string_view text) noexcept;

/// How many characters valid UTF-8 has.
constexpr std::size_t characterCount(std::string_view text) noexcept
{
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return !isContinuation(static_cast<unsigned char>(byte));
    }));
}

} // namespace loadwarden::utf8
