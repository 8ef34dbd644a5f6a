#include "core/quantities/temperature.h"

#include <gtest/gtest.h>

#include <cstdint>
#include <stdexcept>

namespace loadwarden {
namespace {

constexpr Temperature celsius(std::int64_t hundredths)
{
    return Temperature::fromCelsiusHundredths(hundredths);
}

constexpr Temperature fahrenheit(std::int64_t hundredths)
{
    return Temperature::fromFahrenheitHundredths(hundredths);
}

struct SameTemperature {
    std::int64_t fahrenheitHundredths;
    std::int64_t celsiusHundredths;
    const char* source;
};

// NIST Special Publication 811 (2008), appendix B.8, gives t/°C = (t/°F - 32)/1.8; the formula from
// memory, the pairs by it. The pairs of sterilization temperatures are printed together in the CDC
// Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), rounded to whole
// degrees: 121 °C and 250 °F are not the same, nor are 132 °C and 270 °F.
const SameTemperature same[] = {
    {3'200, 0, "ice point; SP 811 B.8"},
    {21'200, 10'000, "SP 811 B.8"},
    {-4'000, -4'000, "where the scales meet; SP 811 B.8"},
    {-45'967, -27'315, "absolute zero; SI Brochure, 9th edition, 2.3.1: t/°C = T/K - 273.15"},
    {26'960, 13'200, "SP 811 B.8"},
    {27'320, 13'400, "SP 811 B.8"},
    {24'980, 12'100, "SP 811 B.8"},
};

TEST(Temperature, SameInBothScales)
{
    for (const SameTemperature& pair : same) {
        EXPECT_EQ(fahrenheit(pair.fahrenheitHundredths), celsius(pair.celsiusHundredths))
            << pair.source;
    }
    EXPECT_LT(fahrenheit(26'999), fahrenheit(27'000));
    EXPECT_GT(fahrenheit(27'000), celsius(13'200));
    EXPECT_LT(celsius(12'100), fahrenheit(25'000));
}

TEST(Temperature, IsZeroAtAbsoluteZero)
{
    static_assert(celsius(-27'315).units() == 0);
    static_assert(fahrenheit(-45'967).units() == 0);
    static_assert(celsius(0).units() == 491'670); // 273.15 K
}

TEST(Temperature, DiffersByKelvins)
{
    const TemperatureDifference half = TemperatureDifference::fromKelvinHundredths(50);
    EXPECT_EQ(celsius(13'250) - celsius(13'200), half);
    EXPECT_EQ((celsius(13'200) - celsius(13'250)).magnitude(), half);
    EXPECT_EQ(fahrenheit(27'090) - fahrenheit(27'000), half); // 0.9 °F
    EXPECT_EQ(celsius(13'200) + half, celsius(13'250));
    EXPECT_EQ(celsius(13'200) - half, celsius(13'150));
    EXPECT_LT(celsius(13'249) - celsius(13'200), half);
}

TEST(Temperature, RefusesNumbersThatCannotBeHeld)
{
    EXPECT_THROW(static_cast<void>(celsius(INT64_MAX)), std::out_of_range);
    EXPECT_THROW(static_cast<void>(fahrenheit(INT64_MIN)), std::out_of_range);
    EXPECT_THROW(static_cast<void>(TemperatureDifference::fromKelvinHundredths(INT64_MAX)),
                 std::out_of_range);
    EXPECT_NO_THROW(
        static_cast<void>(celsius(1'000'000'000'000'000))); // the most of parseDecimal()
}

} // namespace
} // namespace loadwarden
