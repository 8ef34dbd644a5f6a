#include "core/quantities/json_text.h"

#include <cstddef>

namespace loadwarden {

namespace {

constexpr bool isContinuation(unsigned char byte)
{
    return (byte & 0xC0U) == 0x80U;
}

/// Bytes of the well-formed character (Unicode, table 3-7) at the start of `text`; 0: there is
/// none.
std::size_t characterLength(std::string_view text)
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

void appendEscaped(std::string& out, unsigned char control)
{
    constexpr std::string_view digits = "0123456789abcdef";
    out += "\\u00";
    out += digits[control >> 4U];
    out += digits[control & 0xFU];
}

} // namespace

void appendJsonString(std::string& out, std::string_view text)
{
    out += '"';
    std::size_t plain = 0; // start of what is copied as it stands
    std::size_t i = 0;
    const auto copyPlain = [&] { out.append(text, plain, i - plain); };
    while (i < text.size()) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if (byte >= 0x20 && byte < 0x80 && byte != '"' && byte != '\\') {
            ++i;
            continue;
        }
        if (byte >= 0x80) {
            if (const std::size_t length = characterLength(text.substr(i)); length != 0) {
                i += length;
                continue;
            }
        }
        copyPlain();
        switch (byte) {
        case '"': out += "\\\""; break;
        case '\\': out += "\\\\"; break;
        case '\n': out += "\\n"; break;
        case '\r': out += "\\r"; break;
        case '\t': out += "\\t"; break;
        default:
            if (byte < 0x20) {
                appendEscaped(out, byte);
            } else {
                out += "\xEF\xBF\xBD"; // U+FFFD
            }
        }
        ++i;
        plain = i;
    }
    copyPlain();
    out += '"';
}

} // namespace loadwarden
