#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace loadwarden {

/// What a PIN's hash costs: of whoever signs, and of whoever guesses. Argon2id (RFC 9106).
struct PinCost {
    unsigned long long passes = 2;
    std::size_t bytes = 64ULL << 20U;

    /// The least that the library allows: for tests.
    [[nodiscard]] static PinCost least();
};

/// The hash of a PIN with a salt of its own, as text that names its cost. Throws std::bad_alloc
/// when there is not enough memory.
[[nodiscard]] std::string hashOfPin(std::string_view pin, const PinCost& cost);

/// Whether a text is such a hash, of whatever PIN and cost.
[[nodiscard]] bool isPinHash(const std::string& text);

/// Whether the hash is of that PIN. False also for text that is no hash.
[[nodiscard]] bool isPinOf(std::string_view pin, const std::string& hash);

} // namespace loadwarden
