#include "core/cycle/trace/saturation.h"
#include "core/cycle/trace/saturation_difference.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

std::vector<SaturationDifference> differences(const Trace& trace)
{
    const Band band = support::bandOf(134, 137);
    TraceSettings settings;
    settings.saturationEdgeSeconds = 0;
    return saturationDifferences(trace, band, findExposure(trace, band, true), settings);
}

Trace heldTrace()
{
    Trace trace = support::traceOf({0, 60, 120, 180, 240}, {20, 135, 135, 135, 20});
    trace.channels.push_back({"drain", ChannelRole::drainTemperature, {20, 134, 134.5, 136, 20}});
    const double held = saturationPressure(135);
    trace.channels.push_back(
        {"pressure", ChannelRole::chamberPressure, {100, held, held, held, 100}});
    return trace;
}

TEST(SaturationDifference, IsMeasuredLessSaturationOverTheHold)
{
    const auto found = differences(heldTrace());
    ASSERT_EQ(found.size(), 2U);
    EXPECT_NEAR(found[0].mean, 0, 1e-9);
    EXPECT_NEAR(found[0].greatest, 0, 1e-9);
    EXPECT_EQ(found[0].leastAtSeconds, 60);
    EXPECT_EQ(found[0].greatestAtSeconds, 60);
    // Above saturation is above 0 (superheat), below it below 0 (air).
    EXPECT_EQ(found[1].channel, 1U);
    EXPECT_NEAR(found[1].least, -1, 1e-9);
    EXPECT_EQ(found[1].leastAtSeconds, 60);
    EXPECT_NEAR(found[1].greatest, 1, 1e-9);
    EXPECT_EQ(found[1].greatestAtSeconds, 180);
    EXPECT_NEAR(found[1].mean, (-1 - 2 * 0.5 + 1) / 4, 1e-9);
    EXPECT_EQ(found[1].measured, 3U);
}

TEST(SaturationDifference, IsNotJudgedAtTheEdgesOfTheHold)
{
    const Trace trace = heldTrace();
    const Band band = support::bandOf(134, 137);
    const auto found = saturationDifferences(trace, band, findExposure(trace, band, true));
    ASSERT_EQ(found.size(), 2U);
    EXPECT_NEAR(found[1].least, -0.5, 1e-9);
    EXPECT_NEAR(found[1].greatest, -0.5, 1e-9);
    EXPECT_EQ(found[1].leastAtSeconds, 120);
    EXPECT_EQ(found[1].measured, 3U);
}

// IAPWS R7-97(2012) by python3-iapws 1.5.3-1: 304.1989 kPa is 134 °C. A tenth of it air leaves
// steam of 273.78 kPa, which IAPWS-IF97 puts at 130.4 °C: the chamber is colder than its pressure
// says.
TEST(SaturationDifference, IsBelowZeroWhereAirCarriesPartOfThePressure)
{
    const Trace trace =
        support::traceOf({0, 60, 120}, {130.43, 130.43, 130.43}, {304.1989, 304.1989, 304.1989});
    Band band = support::bandOf(130, 134);
    band.required = {0};
    const auto found = saturationDifferences(trace, band, findExposure(trace, band, true));
    ASSERT_EQ(found.size(), 1U);
    EXPECT_NEAR(found[0].mean, -3.57, 0.01);
    EXPECT_NEAR(saturationTemperature(0.9 * 304.1989), 130.43, 0.01);
}

TEST(SaturationDifference, LeavesOutWhatWasNotMeasured)
{
    Trace trace = heldTrace();
    trace.channels[2].values[1] = std::nan("");
    const auto found = differences(trace);
    EXPECT_EQ(found[1].measured, 2U);
    EXPECT_NEAR(found[1].least, -0.5, 1e-9);
    trace.channels[2].values.assign(5, std::nan(""));
    EXPECT_TRUE(std::isnan(differences(trace)[0].mean));
    EXPECT_TRUE(std::isnan(differences(trace)[0].least));
    Band withPressure = support::bandOf(134, 137);
    withPressure.required.push_back(2);
    const Trace whole = heldTrace();
    EXPECT_EQ(
        saturationDifferences(whole, withPressure, findExposure(whole, withPressure, true)).size(),
        2U);
    trace.channels.pop_back();
    EXPECT_TRUE(differences(trace).empty());
    EXPECT_TRUE(differences({}).empty());
}

} // namespace
} // namespace loadwarden
