#include "core/journal/hex.h"

#include <algorithm>
#include <array>
#include <cstddef>

namespace loadwarden {
namespace {

constexpr std::int8_t none = -1;

/// The values of the lower-case hexadecimal digits by their bytes; `none` for all other bytes.
constexpr auto values = [] {
    std::array<std::int8_t, 256> all{};
    all.fill(none);
    for (std::int8_t value = 0; value < 16; ++value) {
        all[static_cast<std::size_t>(value < 10 ? '0' + value : 'a' + value - 10)] = value;
    }
    return all;
}();

/// Each byte in hexadecimal.
constexpr auto texts = [] {
    constexpr std::string_view digits = "0123456789abcdef";
    std::array<std::array<char, 2>, 256> all{};
    for (std::size_t byte = 0; byte < all.size(); ++byte) {
        all[byte] = {digits[byte / 16], digits[byte % 16]};
    }
    return all;
}();

int valueOf(char digit) noexcept
{
    return values[static_cast<unsigned char>(digit)];
}

} // namespace

void appendHex(std::string& out, std::span<const std::uint8_t> bytes)
{
    const std::size_t from = out.size();
    out.resize(from + bytes.size() * 2);
    char* place = out.data() + from;
    for (const std::uint8_t byte : bytes) {
        place = std::ranges::copy(texts[byte], place).out;
    }
}

bool parseHex(std::string_view hex, std::span<std::uint8_t> out) noexcept
{
    if (hex.size() != out.size() * 2) {
        return false;
    }
    int all = 0; // negative when one is no digit
    for (std::size_t i = 0; i < out.size(); ++i) {
        const int high = valueOf(hex[2 * i]);
        const int low = valueOf(hex[2 * i + 1]);
        all |= high | low;
        out[i] = static_cast<std::uint8_t>(high * 16 + low);
    }
    return all >= 0;
}

} // namespace loadwarden
