#include "core/quantities/utf8.h"

namespace loadwarden::utf8 {

std::size_t characterLength(std::string_view text) noexcept
{
    const auto at = [&](std::size_t i) {
        return i < text.size() ? static_cast<unsigned char>(text[i])
                               : static_cast<unsigned char>(0);
    };
    const unsigned char first = at(0);
    const unsigned char second = at(1);
    if (first < 0x80) {
        return 1;
    }
    if (first >= 0xC2 && first <= 0xDF) {
        return isContinuation(second) ? 2 : 0;
    }
    if (first >= 0xE0 && first <= 0xEF) {
        const bool tooLong = first == 0xE0 && second < 0xA0;
        const bool surrogate = first == 0xED && second > 0x9F;
        return isContinuation(second) && !tooLong && !surrogate && isContinuation(at(2)) ? 3 : 0;
    }
    if (first >= 0xF0 && first <= 0xF4) {
        const bool tooLong = first == 0xF0 && second < 0x90;
        const bool beyond = first == 0xF4 && second > 0x8F;
        return isContinuation(second) && !tooLong && !beyond && isContinuation(at(2))
                       && isContinuation(at(3))
                   ? 4
                   : 0;
    }
    return 0;
}

Character characterAt(std::string_view text) noexcept
{
    const std::size_t bytes = characterLength(text);
    if (bytes == 0) {
        return {replacement, 1};
    }
    const auto first = static_cast<unsigned char>(text.front());
    if (bytes == 1) {
        return {first, 1};
    }
    // The first byte begins with as many ones as the character has bytes, and a zero.
    char32_t code = first & (0x7FU >> bytes);
    for (std::size_t i = 1; i < bytes; ++i) {
        code = code << 6U | (static_cast<unsigned char>(text[i]) & 0x3FU);
    }
    return {code, bytes};
}

} // namespace loadwarden::utf8
