#include "core/cycle/trace/indicator_response.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

// ISO 11140-1, annex (2005 text), type 5: at least 16.5 min at 121 °C and 1.2 min at 135 °C; the
// temperature coefficient of such an indicator is within 6 to 14 °C (memory).
const std::vector<StatedValue> leastType5{{121, 16.5}, {135, 1.2}};

TEST(IndicatorResponse, HasTheTemperatureCoefficientOfItsStatedValues)
{
    const auto line = statedLine(leastType5);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->reference.zKelvin, 14 / std::log10(16.5 / 1.2), 1e-12);
    EXPECT_GT(line->reference.zKelvin, 6);
    EXPECT_LT(line->reference.zKelvin, 14);
    EXPECT_NEAR(line->correlation, -1, 1e-12);
    EXPECT_NEAR(minutesToEndpoint(*line, 121), 16.5, 1e-11);
    EXPECT_NEAR(minutesToEndpoint(*line, 135), 1.2, 1e-12);
    EXPECT_EQ(line->leastCelsius, 121);
    EXPECT_EQ(line->mostCelsius, 135);
}

// The same text: it must not reach its endpoint at 63.6 % of the stated value.
TEST(IndicatorResponse, IsTheFractionOfTheStatedTime)
{
    const auto line = statedLine(leastType5).value();
    for (const auto& [celsius, minutes] : {std::pair{121.0, 16.5}, {135.0, 1.2}}) {
        const std::vector<double> hot(2, celsius);
        const std::vector<double> whole{0, minutes * 60};
        const std::vector<double> part{0, 0.636 * minutes * 60};
        EXPECT_NEAR(expectedResponse(line, whole, hot, 1e9).fraction, 1, 1e-12);
        EXPECT_NEAR(expectedResponse(line, part, hot, 1e9).fraction, 0.636, 1e-12);
        EXPECT_FALSE(expectedResponse(line, whole, hot, 1e9).isBeyondStated);
    }
    const std::vector<double> hotter{130, 135.1};
    const std::vector<double> minute{0, 60};
    EXPECT_TRUE(expectedResponse(line, minute, hotter).isBeyondStated);
}

TEST(IndicatorResponse, LeavesOutWhatWasNotMeasured)
{
    const auto line = statedLine(leastType5).value();
    const std::vector<double> seconds{0, 30, 60, 90};
    const std::vector<double> celsius{135, 135, std::nan(""), 135};
    const auto response = expectedResponse(line, seconds, celsius);
    EXPECT_NEAR(response.fraction, 0.5 / 1.2, 1e-12);
    EXPECT_EQ(response.leftOutSeconds, 60);
}

TEST(IndicatorResponse, FitsThreeStatedValuesByLeastSquares)
{
    // log10 of the minutes at 120, 130, 140 °C: 1, 0.1, −1. By hand: slope −0.1, mean 0.1/3.
    const std::vector<StatedValue> stated{{120, 10}, {130, std::pow(10, 0.1)}, {140, 0.1}};
    const auto line = statedLine(stated);
    ASSERT_TRUE(line);
    EXPECT_NEAR(line->reference.zKelvin, 10, 1e-12);
    EXPECT_NEAR(line->reference.celsius, 130, 1e-12);
    EXPECT_NEAR(std::log10(line->minutes), 0.1 / 3, 1e-12);
    EXPECT_NEAR(line->correlation, -2 / std::sqrt(2 * (2.01 - 0.01 / 3)), 1e-12);
}

TEST(IndicatorResponse, NeedsAFallingLine)
{
    const double nan = std::nan("");
    const std::vector<std::vector<StatedValue>> none{
        {},
        {{134, 3.5}},
        {{134, 3.5}, {134, 3.6}},
        {{121, 1.2}, {135, 16.5}},
        {{121, 5}, {135, 5}},
        {{121, 0}, {135, 1.2}},
        {{121, -1}, {135, 1.2}},
        {{121, nan}, {135, 1.2}},
        {{nan, 16.5}, {135, 1.2}},
        {{121, HUGE_VAL}, {135, 1.2}},
        {{121, 16.5}, {121.5, 1.2}}, // z 0.4 K
        {{121, 5}, {135, 4.9}},      // z 1,600 K
    };
    for (const auto& stated : none) {
        EXPECT_FALSE(statedLine(stated));
    }
}

} // namespace
} // namespace loadwarden
