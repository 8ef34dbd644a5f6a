#include "core/quantities/decimal.h"

#include <gtest/gtest.h>

#include <string>

namespace loadwarden {
namespace {

TEST(ParseDecimal, ScalesExactly)
{
    EXPECT_EQ(parseDecimal("132", 2), 13'200);
    EXPECT_EQ(parseDecimal("132.4", 2), 13'240);
    EXPECT_EQ(parseDecimal("1.324e2", 2), 13'240);
    EXPECT_EQ(parseDecimal("13240E-2", 2), 13'240);
    EXPECT_EQ(parseDecimal("-0.5", 3), -500);
    EXPECT_EQ(parseDecimal("0.01", 2), 1);
    EXPECT_EQ(parseDecimal("100e+0", 0), 100);
    EXPECT_EQ(parseDecimal("1010010.00010001", 8), 101'001'000'010'001);
}

TEST(ParseDecimal, TakesZeroHoweverItIsWritten)
{
    for (const char* text : {"0", "-0", "0.000", "0e99999999999999999999", "-0.0E-7"}) {
        EXPECT_EQ(parseDecimal(text, 1), 0) << text;
    }
}

TEST(ParseDecimal, TakesZerosAtTheEndBeyondTheAllowedDecimals)
{
    EXPECT_EQ(parseDecimal("132.4000", 1), 1324);
    EXPECT_EQ(parseDecimal("1" + std::string(40, '0') + "e-40", 0), 1);
    EXPECT_EQ(parseDecimal("0." + std::string(40, '0') + "25e42", 0), 25 * 1);
}

TEST(ParseDecimal, RefusesMoreDecimalsThanAllowed)
{
    EXPECT_FALSE(parseDecimal("132.41", 1));
    EXPECT_FALSE(parseDecimal("1e-1", 0));
    EXPECT_FALSE(parseDecimal("0.1234567890123456789", 15));
    EXPECT_FALSE(parseDecimal("1e-99999999999999999999", 15));
}

TEST(ParseDecimal, StopsAtTenToTheFifteenth)
{
    EXPECT_EQ(parseDecimal("1000000000000000", 0), 1'000'000'000'000'000);
    EXPECT_EQ(parseDecimal("-1e15", 0), -1'000'000'000'000'000);
    EXPECT_EQ(parseDecimal("1e13", 2), 1'000'000'000'000'000);
    EXPECT_EQ(parseDecimal("999999999999999", 0), 999'999'999'999'999);
    EXPECT_FALSE(parseDecimal("1000000000000001", 0));
    EXPECT_FALSE(parseDecimal("1e13", 3));
    EXPECT_FALSE(parseDecimal("1e16", 0));
    EXPECT_FALSE(parseDecimal("99999999999999999999999999", 0));
    EXPECT_FALSE(parseDecimal("1e99999999999999999999", 0));
}

// What RFC 8259, section 6, does not allow.
TEST(ParseDecimal, RefusesWhatJsonDoesNotCallANumber)
{
    for (const char* text :
         {"",         "-",   "+1",    "01",    "-01",   ".5",    "5.",      "-.5",
          "1e",       "1e+", "1.e1",  "0x10",  "1,5",   "1 ",    " 1",      "NaN",
          "Infinity", "--1", "1.2.3", "1e1.0", "1e1e1", "1_000", "\xd9\xa1"}) {
        EXPECT_FALSE(parseDecimal(text, 2)) << text;
    }
}

} // namespace
} // namespace loadwarden
