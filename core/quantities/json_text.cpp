#include "core/quantities/json_text.h"

#include "core/quantities/utf8.h"

#include <array>
#include <cstddef>

namespace loadwarden {

namespace {

/// Of each byte whether it stands for itself in a string.
constexpr auto plainBytes = [] {
    std::array<bool, 256> all{};
    for (std::size_t byte = 0x20; byte < 0x80; ++byte) {
        all[byte] = byte != '"' && byte != '\\';
    }
    return all;
}();

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
        if (plainBytes[byte]) {
            ++i;
            continue;
        }
        if (byte >= 0x80) {
            if (const std::size_t length = utf8::characterLength(text.substr(i)); length != 0) {
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
