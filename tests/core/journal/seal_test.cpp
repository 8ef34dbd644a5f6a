#include "core/journal/hex.h"
#include "core/journal/seal.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

std::string hexOf(std::span<const std::uint8_t> bytes)
{
    std::string hex;
    appendHex(hex, bytes);
    return hex;
}

SealKey keyOf(std::string_view seed)
{
    return SealKey::fromSeed(seed).value();
}

// Source: RFC 8032, 7.1, tests 1 and 2.
TEST(SealKey, SignsAsEd25519)
{
    const SealKey empty = keyOf("9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60");
    EXPECT_EQ(hexOf(empty.publicKey().bytes),
              "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a");
    EXPECT_EQ(hexOf(empty.sign("")),
              "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e065224901555fb8821590a33bac"
              "c61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b");
    const SealKey one = keyOf("4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb");
    EXPECT_EQ(hexOf(one.publicKey().bytes),
              "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");
    EXPECT_EQ(hexOf(one.sign("\x72")),
              "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da085ac1e43e15996e"
              "458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
}

TEST(SealKey, IsAnotherEachTime)
{
    const SealKey a = SealKey::create();
    EXPECT_NE(a.publicKey(), SealKey::create().publicKey());
    EXPECT_EQ(SealKey::fromSeed(a.seedHex())->publicKey(), a.publicKey());
    EXPECT_FALSE(SealKey::fromSeed(a.seedHex().substr(2)));
}

Seal sample(const SealKey& key)
{
    return makeSeal("jn-1", {9, hashOf("head")}, {Instant{1'930'000'000'000}, -360}, key);
}

TEST(Seal, IsGenuineAsMadeAndReadBack)
{
    const SealKey key = SealKey::create();
    const Seal seal = sample(key);
    EXPECT_TRUE(isGenuine(seal));
    const auto read = readSeal(writeSeal(seal));
    ASSERT_TRUE(read);
    EXPECT_EQ(*read, seal);
    EXPECT_TRUE(isGenuine(*read));
}

TEST(Seal, IsNotGenuineWithAnythingChanged)
{
    const Seal seal = sample(SealKey::create());
    const auto changed = [&seal](auto change) {
        Seal other = seal;
        change(other);
        return isGenuine(other);
    };
    EXPECT_FALSE(changed([](Seal& s) { s.journal = "jn-2"; }));
    EXPECT_FALSE(changed([](Seal& s) { s.head.seq = 8; }));
    EXPECT_FALSE(changed([](Seal& s) { s.head.hash = hashOf("other"); }));
    EXPECT_FALSE(changed([](Seal& s) { s.at.at.ms += 1; }));
    EXPECT_FALSE(changed([](Seal& s) { s.at.offsetMinutes = 0; }));
    EXPECT_FALSE(changed([](Seal& s) { s.key = SealKey::create().publicKey(); }));
    EXPECT_FALSE(changed([](Seal& s) { s.signature[5] ^= 1U; }));
}

TEST(Seal, IsNotReadFromOtherText)
{
    const std::string line = writeSeal(sample(SealKey::create()));
    EXPECT_FALSE(readSeal(""));
    EXPECT_FALSE(readSeal("{}"));
    EXPECT_FALSE(readSeal(line + "\n"));
    EXPECT_FALSE(readSeal(line.substr(0, line.size() - 4) + "\"}"));
    EXPECT_FALSE(readSeal("{\"note\":1," + line.substr(1)));
}

TEST(Seal, IsNotReadWhereANumberIsNoInteger)
{
    const std::string line = writeSeal(sample(SealKey::create()));
    for (const std::string member : {"\"seq\":9", "\"at\":[1930000000000", ",-360]"}) {
        const std::size_t at = line.find(member);
        ASSERT_NE(at, std::string::npos) << member;
        const std::size_t digits = at + member.find_first_of("-0123456789");
        const std::size_t end = line.find_first_not_of("-0123456789", digits);
        for (const char* number :
             {"1e300", "-1e300", "9.0", "1e400", "18446744073709551615", "null"}) {
            EXPECT_FALSE(readSeal(line.substr(0, digits) + number + line.substr(end)))
                << member << ' ' << number;
        }
    }
}

} // namespace
} // namespace loadwarden
