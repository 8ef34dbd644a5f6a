#include "core/journal/hash.h"

#include "core/journal/hex.h"

#include <sodium.h>

namespace loadwarden {

Hash hashOf(std::string_view bytes)
{
    // Chooses the code for this processor, several times as fast as the one for any. It fails only
    // where there is no randomness, which is not asked for here.
    [[maybe_unused]] static const int chosen = sodium_init();
    Hash hash;
    // Fails only for lengths of output and key that are not used here.
    crypto_generichash_blake2b(hash.bytes.data(), hash.bytes.size(),
                               reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                               nullptr, 0);
    return hash;
}

std::string hexOf(const Hash& hash)
{
    std::string hex;
    hex.reserve(hash.bytes.size() * 2);
    appendHex(hex, hash.bytes);
    return hex;
}

std::optional<Hash> parseHash(std::string_view hex) noexcept
{
    Hash hash;
    return parseHex(hex, hash.bytes) ? std::optional(hash) : std::nullopt;
}

} // namespace loadwarden
