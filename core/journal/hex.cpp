#include "core/journal/hex.h"

namespace loadwarden {
namespace {

/// 0 to 15, or -1 for what is no lower-case hexadecimal digit.
int valueOf(char digit) noexcept
{
    if (digit >= '0' && digit <= '9') {
        return digit - '0';
    }
    return digit >= 'a' && digit <= 'f' ? digit - 'a' + 10 : -1;
}

} // namespace

void appendHex(std::string& out, std::span<const std::uint8_t> bytes)
{
    constexpr std::string_view digits = "0123456789abcdef";
    for (const std::uint8_t byte : bytes) {
        out += digits[byte >> 4U];
        out += digits[byte & 0xFU];
    }
}

bool parseHex(std::string_view hex, std::span<std::uint8_t> out) noexcept
{
    if (hex.size() != out.size() * 2) {
        return false;
    }
    for (std::size_t i = 0; i < out.size(); ++i) {
        const int high = valueOf(hex[2 * i]);
        const int low = valueOf(hex[2 * i + 1]);
        if (high < 0 || low < 0) {
            return false;
        }
        out[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    return true;
}

} // namespace loadwarden
