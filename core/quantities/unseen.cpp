#include "core/quantities/unseen.h"

#include "core/quantities/utf8.h"

#include <algorithm>
#include <array>

namespace loadwarden {

namespace {

struct Range {
    char32_t first;
    char32_t last;
};

/// In order. Unicode 14, as the header says; of the controls only those beyond ASCII.
constexpr std::array unseenRanges = {
    Range{0x0080, 0x00A0},   Range{0x00AD, 0x00AD},   Range{0x034F, 0x034F},
    Range{0x061C, 0x061C},   Range{0x115F, 0x1160},   Range{0x1680, 0x1680},
    Range{0x17B4, 0x17B5},   Range{0x180B, 0x180F},   Range{0x2000, 0x200F},
    Range{0x2028, 0x202F},   Range{0x205F, 0x206F},   Range{0x3000, 0x3000},
    Range{0x3164, 0x3164},   Range{0xFE00, 0xFE0F},   Range{0xFEFF, 0xFEFF},
    Range{0xFFA0, 0xFFA0},   Range{0xFFF0, 0xFFFB},   Range{0x1BCA0, 0x1BCA3},
    Range{0x1D173, 0x1D17A}, Range{0xE0000, 0xE0FFF},
};

bool isUnseen(char32_t code) noexcept
{
    if (code < 0x80) {
        return isControl(code);
    }
    const auto* const range = std::ranges::lower_bound(unseenRanges, code, {}, &Range::last);
    return range != unseenRanges.end() && code >= range->first;
}

template <class IsWanted>
std::optional<Unseen> findFirst(std::string_view text, IsWanted isWanted) noexcept
{
    std::size_t number = 0;
    for (std::size_t at = 0; at < text.size();) {
        const utf8::Character character = utf8::characterAt(text.substr(at));
        ++number;
        if (isWanted(character.code)) {
            return Unseen{character.code, number};
        }
        at += character.bytes;
    }
    return std::nullopt;
}

} // namespace

std::optional<Unseen> findUnseen(std::string_view name) noexcept
{
    const bool isPlain = std::ranges::all_of(name, [](char c) { return c >= 0x20 && c < 0x7F; });
    return isPlain ? std::nullopt : findFirst(name, isUnseen);
}

std::optional<Unseen> findControl(std::string_view text) noexcept
{
    return findFirst(
        text, [](char32_t code) { return isControl(code) && code != U'\t' && code != U'\n'; });
}

std::string codeText(char32_t code)
{
    constexpr std::string_view digits = "0123456789ABCDEF";
    constexpr std::size_t leastDigits = 4;
    std::string text;
    for (; code != 0 || text.size() < leastDigits; code >>= 4U) {
        text += digits[code & 0xFU];
    }
    std::ranges::reverse(text);
    return "U+" + text;
}

std::string shown(std::string_view text)
{
    std::string out;
    while (!text.empty()) {
        const utf8::Character character = utf8::characterAt(text);
        if (isUnseen(character.code) || character.code == utf8::replacement) {
            out += '<' + codeText(character.code) + '>';
        } else {
            out += text.substr(0, character.bytes);
        }
        text.remove_prefix(character.bytes);
    }
    return out;
}

std::string unseenText(Unseen found)
{
    return "character " + std::to_string(found.number) + " is " + codeText(found.code)
           + ", which cannot be seen or looks like a plain space; leave it out, or type a plain "
             "space";
}

} // namespace loadwarden
