#include "core/journal/hash.h"

#include <gtest/gtest.h>

namespace loadwarden {
namespace {

// Source: Python 3.11 hashlib.blake2b(data, digest_size=32).
TEST(Hash, IsUnkeyedBlake2bOf32Bytes)
{
    EXPECT_EQ(hexOf(hashOf("")),
              "0e5751c026e543b2e8ab2eb06099daa1d1e5df47778f7787faab45cdf12fe3a8");
    EXPECT_EQ(hexOf(hashOf("abc")),
              "bddd813c634239723171ef3fee98579b94964e3bb1cb3e427262c8c068d52319");
}

TEST(Hash, IsReadBackFromItsDigits)
{
    const Hash hash = hashOf("x");
    EXPECT_EQ(parseHash(hexOf(hash)), hash);
}

TEST(Hash, IsNotReadFromOtherText)
{
    const std::string hex = hexOf(hashOf("x"));
    EXPECT_EQ(parseHash(""), std::nullopt);
    EXPECT_EQ(parseHash(hex.substr(1)), std::nullopt);
    EXPECT_EQ(parseHash(hex + "0"), std::nullopt);
    EXPECT_EQ(parseHash("G" + hex.substr(1)), std::nullopt);
    EXPECT_EQ(parseHash("A" + hex.substr(1)), std::nullopt) << "upper case";
}

} // namespace
} // namespace loadwarden
