#include "core/cycle/trace/saturation.h"
#include "tests/support/ask_python.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

/// A number to nine significant digits, as the tables print them.
std::string printed(double value)
{
    char text[32];
    std::snprintf(text, sizeof text, "%.9g", value);
    return text;
}

// IAPWS R7-97(2012), table 35.
TEST(Saturation, PressureIsThatOfTable35ToEveryPrintedDigit)
{
    EXPECT_EQ(printed(saturationPressure(300 - 273.15) / 1000), "0.00353658941");
    EXPECT_EQ(printed(saturationPressure(500 - 273.15) / 1000), "2.63889776");
    EXPECT_EQ(printed(saturationPressure(600 - 273.15) / 1000), "12.3443146");
}

// IAPWS R7-97(2012), table 36.
TEST(Saturation, TemperatureIsThatOfTable36ToEveryPrintedDigit)
{
    EXPECT_EQ(printed(saturationTemperature(100) + 273.15), "372.755919");
    EXPECT_EQ(printed(saturationTemperature(1'000) + 273.15), "453.035632");
    EXPECT_EQ(printed(saturationTemperature(10'000) + 273.15), "584.149488");
}

// The general-purpose package python3-iapws as the outside source, run here.
TEST(Saturation, AgreesWithPythonsIapwsFrom100To140Celsius)
{
    std::string asked;
    std::vector<double> celsius;
    for (int tenths = 1'000; tenths <= 1'400; ++tenths) {
        celsius.push_back(tenths / 10.0);
        asked += std::to_string(tenths / 10) + "." + std::to_string(tenths % 10) + "\n";
    }
    const auto lines = support::askPython("cycle/trace/saturation_table.py", asked);
    ASSERT_EQ(lines.size(), celsius.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        std::size_t used = 0;
        const double kPa = std::stod(lines[i], &used);
        const double back = std::stod(lines[i].substr(used));
        EXPECT_NEAR(saturationPressure(celsius[i]) / kPa, 1, 1e-12) << celsius[i];
        EXPECT_NEAR(saturationTemperature(kPa), back, 1e-9) << celsius[i];
    }
}

// The ASHRAE correlation, another formula for the same line: npm psychrolib 1.1.1. The columns by
// IAPWS: python3-iapws 1.5.3-1.
TEST(Saturation, IsThatOfAshraeWithinAHundredthOfAKelvin)
{
    const auto rows = support::referenceRows("steam_saturation_reference.csv");
    ASSERT_EQ(rows.size(), 11U);
    for (const auto& row : rows) {
        const double celsius = std::stod(row[0]);
        EXPECT_NEAR(saturationPressure(celsius), std::stod(row[1]), 0.5001e-4) << row[0];
        EXPECT_NEAR(saturationTemperature(std::stod(row[2])), celsius, 0.01) << row[0];
        EXPECT_NEAR(saturationTemperature(std::stod(row[3])), celsius, 0.01) << row[0];
    }
}

TEST(Saturation, IsNothingBeyondTheLineOfWaterAndSteam)
{
    const double nan = std::nan("");
    for (const double celsius : {-0.001, 373.947, -300.0, 1e300, HUGE_VAL, -HUGE_VAL, nan}) {
        EXPECT_TRUE(std::isnan(saturationPressure(celsius))) << celsius;
    }
    for (const double kPa : {0.611212, 0.0, -5.0, 22'064.1, HUGE_VAL, nan}) {
        EXPECT_TRUE(std::isnan(saturationTemperature(kPa))) << kPa;
    }
    // IAPWS R7-97(2012), chapter 8.1: the ends of the line.
    EXPECT_NEAR(saturationPressure(0), 0.611213, 0.5e-6);
    EXPECT_NEAR(saturationPressure(373.946), 22'064, 0.5);
    EXPECT_NEAR(saturationTemperature(0.611213), 0, 1e-4);
    EXPECT_NEAR(saturationTemperature(22'064), 373.946, 1e-3);
}

} // namespace
} // namespace loadwarden
