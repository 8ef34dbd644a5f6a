#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

// Characters that a screen or a page does not show. Two names that differ by them look alike, and
// some turn the order of the characters around them.

/// A character of a text, and which one it is, counted from 1.
struct Unseen {
    char32_t code;
    std::size_t number;
};

/// A control character: U+0000 to U+001F, U+007F to U+009F.
[[nodiscard]] constexpr bool isControl(char32_t code) noexcept
{
    return code < 0x20 || (code >= 0x7F && code <= 0x9F);
}

/// A character that changes the direction or the lines of the text around it: Unicode's
/// Bidi_Control (PropList.txt), line and paragraph separator.
[[nodiscard]] constexpr bool movesText(char32_t code) noexcept
{
    return code == 0x061C || code == 0x200E || code == 0x200F || (code >= 0x2028 && code <= 0x202E)
           || (code >= 0x2066 && code <= 0x2069);
}

/// The first character of valid UTF-8 that a name must not hold (in the formats: every text that is
/// compared, not only read): a control character, white space
/// other than U+0020, or one that is not shown. These are Unicode's White_Space (PropList.txt) and
/// Default_Ignorable_Code_Point (DerivedCoreProperties.txt), and U+FFF9 to U+FFFB.
[[nodiscard]] std::optional<Unseen> findUnseen(std::string_view name) noexcept;

/// The first control character of valid UTF-8 other than tab and line feed, which a free text may
/// hold.
[[nodiscard]] std::optional<Unseen> findControl(std::string_view text) noexcept;

/// "U+00A0": a character by its code.
[[nodiscard]] std::string codeText(char32_t code);

/// Text of a file, with codes in angle brackets in the place of what cannot be seen and of bytes
/// that are no UTF-8: <U+00A0>.
[[nodiscard]] std::string shown(std::string_view text);

/// What is wrong with a name that holds such a character, in words.
[[nodiscard]] std::string unseenText(Unseen found);

} // namespace loadwarden
