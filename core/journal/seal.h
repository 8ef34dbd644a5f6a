#pragma once

#include "core/journal/chain.h"
#include "core/journal/envelope.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace loadwarden {

/// An Ed25519 public key (RFC 8032).
struct SealPublicKey {
    std::array<std::uint8_t, 32> bytes{};

    friend bool operator==(const SealPublicKey&, const SealPublicKey&) = default;
};

/// The key with which a workstation seals. Lives in a file outside the database and its backups.
class SealKey {
public:
    /// A new key from the operating system's randomness.
    [[nodiscard]] static SealKey create();

    /// The key of a seed of 32 bytes, as 64 lower-case hexadecimal digits; nullopt for other text.
    [[nodiscard]] static std::optional<SealKey> fromSeed(std::string_view hex);

    /// The seed, for the key's file.
    [[nodiscard]] std::string seedHex() const;

    [[nodiscard]] const SealPublicKey& publicKey() const { return m_public; }

    [[nodiscard]] std::array<std::uint8_t, 64> sign(std::string_view message) const;

private:
    explicit SealKey(const std::array<std::uint8_t, 32>& seed);

    std::array<std::uint8_t, 32> m_seed{};
    std::array<std::uint8_t, 64> m_secret{};
    SealPublicKey m_public;
};

/// A statement of what the journal's newest entry was at a moment, signed by a workstation.
struct Seal {
    std::string journal; ///< the journal's id
    Head head;
    JournalTime at;
    SealPublicKey key;
    std::array<std::uint8_t, 64> signature{};

    friend bool operator==(const Seal&, const Seal&) = default;
};

[[nodiscard]] Seal makeSeal(std::string journal, const Head& head, const JournalTime& at,
                            const SealKey& key);

/// Whether the signature is that of the key which the seal names. Whether that key is trusted is
/// for the caller to ask.
[[nodiscard]] bool isGenuine(const Seal& seal);

/// One line of JSON (FORMAT.md).
[[nodiscard]] std::string writeSeal(const Seal& seal);

/// Reads exactly what writeSeal writes; nullopt for anything else.
[[nodiscard]] std::optional<Seal> readSeal(std::string_view line);

} // namespace loadwarden
