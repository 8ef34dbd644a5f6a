#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// A BLAKE2b hash of 32 bytes (RFC 7693), unkeyed.
struct Hash {
    std::array<std::uint8_t, 32> bytes{};

    friend bool operator==(const Hash&, const Hash&) = default;
};

[[nodiscard]] Hash hashOf(std::string_view bytes);

/// 64 lower-case hexadecimal digits.
[[nodiscard]] std::string hexOf(const Hash& hash);

/// Reads what hexOf writes; nullopt for anything else. Does not allocate.
[[nodiscard]] std::optional<Hash> parseHash(std::string_view hex) noexcept;

} // namespace loadwarden
