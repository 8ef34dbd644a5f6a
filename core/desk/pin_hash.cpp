#include "core/desk/pin_hash.h"

#include <array>
#include <new>
#include <sodium.h>
#include <stdexcept>

namespace loadwarden {
namespace {

void readyLibrary()
{
    if (sodium_init() < 0) {
        throw std::runtime_error("The operating system gives no random numbers.");
    }
}

} // namespace

PinCost PinCost::least()
{
    return {crypto_pwhash_OPSLIMIT_MIN, crypto_pwhash_MEMLIMIT_MIN};
}

std::string hashOfPin(std::string_view pin, const PinCost& cost)
{
    readyLibrary();
    std::array<char, crypto_pwhash_STRBYTES> out{};
    if (crypto_pwhash_str_alg(out.data(), pin.data(), pin.size(), cost.passes, cost.bytes,
                              crypto_pwhash_ALG_ARGON2ID13)
        != 0) {
        throw std::bad_alloc();
    }
    return out.data();
}

bool isPinHash(const std::string& text)
{
    readyLibrary();
    const PinCost cost;
    // -1: no hash. Whether it is of another cost is not asked here.
    return crypto_pwhash_str_needs_rehash(text.c_str(), cost.passes, cost.bytes) != -1;
}

bool isPinOf(std::string_view pin, const std::string& hash)
{
    readyLibrary();
    return crypto_pwhash_str_verify(hash.c_str(), pin.data(), pin.size()) == 0;
}

} // namespace loadwarden
