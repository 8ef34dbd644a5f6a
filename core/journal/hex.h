#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace loadwarden {

/// Appends two lower-case hexadecimal digits a byte.
void appendHex(std::string& out, std::span<const std::uint8_t> bytes);

/// Reads exactly as many bytes as there is room for; false, with `out` undefined, when the text is
/// of another length or has anything but lower-case hexadecimal digits.
[[nodiscard]] bool parseHex(std::string_view hex, std::span<std::uint8_t> out) noexcept;

} // namespace loadwarden
