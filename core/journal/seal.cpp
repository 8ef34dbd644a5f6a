#include "core/journal/seal.h"

#include "core/journal/canonical_json.h"
#include "core/journal/hex.h"
#include "core/quantities/json_text.h"

#include <nlohmann/json.hpp>

#include <sodium.h>
#include <stdexcept>

namespace loadwarden {
namespace {

using nlohmann::json;

const unsigned char* octets(std::string_view text)
{
    return reinterpret_cast<const unsigned char*>(text.data());
}

/// The seal's line as far as it is signed.
std::string statement(const Seal& seal)
{
    std::string out = R"({"journal":)";
    appendJsonString(out, seal.journal);
    out += R"(,"seq":)" + std::to_string(seal.head.seq);
    out += R"(,"head":")" + hexOf(seal.head.hash);
    out +=
        R"(","at":[)" + std::to_string(seal.at.at.ms) + ',' + std::to_string(seal.at.offsetMinutes);
    out += R"(],"key":")";
    appendHex(out, seal.key.bytes);
    out += '"';
    return out;
}

std::string signedMessage(const Seal& seal)
{
    return "loadwarden seal 1\n" + statement(seal);
}

/// Throws json::exception where a member is missing or of another type.
std::optional<Seal> take(const json& line)
{
    Seal seal;
    seal.journal = line.at("journal").get_ref<const std::string&>();
    const auto head = parseHash(line.at("head").get_ref<const std::string&>());
    if (!head || !parseHex(line.at("key").get_ref<const std::string&>(), seal.key.bytes)
        || !parseHex(line.at("signature").get_ref<const std::string&>(), seal.signature)) {
        return std::nullopt;
    }
    seal.head = {integerOf(line.at("seq")), *head};
    seal.at = {Instant{integerOf(line.at("at").at(0))},
               static_cast<std::int32_t>(integerOf(line.at("at").at(1)))};
    return seal;
}

} // namespace

SealKey::SealKey(const std::array<std::uint8_t, 32>& seed) : m_seed(seed)
{
    static_assert(crypto_sign_SEEDBYTES == 32 && crypto_sign_SECRETKEYBYTES == 64);
    crypto_sign_seed_keypair(m_public.bytes.data(), m_secret.data(), m_seed.data());
}

SealKey SealKey::create()
{
    if (sodium_init() < 0) {
        throw std::runtime_error("this computer gives no randomness");
    }
    std::array<std::uint8_t, 32> seed{};
    randombytes_buf(seed.data(), seed.size());
    return SealKey(seed);
}

std::optional<SealKey> SealKey::fromSeed(std::string_view hex)
{
    std::array<std::uint8_t, 32> seed{};
    return parseHex(hex, seed) ? std::optional(SealKey(seed)) : std::nullopt;
}

std::string SealKey::seedHex() const
{
    std::string hex;
    appendHex(hex, m_seed);
    return hex;
}

std::array<std::uint8_t, 64> SealKey::sign(std::string_view message) const
{
    std::array<std::uint8_t, 64> signature{};
    crypto_sign_detached(signature.data(), nullptr, octets(message), message.size(),
                         m_secret.data());
    return signature;
}

Seal makeSeal(std::string journal, const Head& head, const JournalTime& at, const SealKey& key)
{
    Seal seal{std::move(journal), head, at, key.publicKey(), {}};
    seal.signature = key.sign(signedMessage(seal));
    return seal;
}

bool isGenuine(const Seal& seal)
{
    const std::string message = signedMessage(seal);
    return crypto_sign_verify_detached(seal.signature.data(), octets(message), message.size(),
                                       seal.key.bytes.data())
           == 0;
}

std::string writeSeal(const Seal& seal)
{
    std::string out = statement(seal) + R"(,"signature":")";
    appendHex(out, seal.signature);
    out += "\"}";
    return out;
}

std::optional<Seal> readSeal(std::string_view line)
{
    try {
        auto seal = take(json::parse(line));
        return seal && writeSeal(*seal) == line ? seal : std::nullopt;
    } catch (const json::exception&) {
        return std::nullopt;
    }
}

} // namespace loadwarden
