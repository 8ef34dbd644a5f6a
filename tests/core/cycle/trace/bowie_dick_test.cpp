#include "core/cycle/trace/bowie_dick.h"
#include "core/cycle/trace/saturation.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

/// Steam at these temperatures each 10 s, before and after it 100 °C.
Trace packTrace(const std::vector<double>& held)
{
    std::vector<double> seconds{500};
    std::vector<double> celsius{100};
    for (const double value : held) {
        seconds.push_back(seconds.back() + 10);
        celsius.push_back(value);
    }
    seconds.push_back(seconds.back() + 10);
    celsius.push_back(100);
    std::vector<double> kPa;
    for (const double value : celsius) {
        kPa.push_back(saturationPressure(value));
    }
    return support::traceOf(seconds, celsius, kPa);
}

// Usually 132–134 °C for 3.5–4 min: CDC Guideline (2008) and public training texts.
const PackDirections directions{132, 134, 210, 240};

TEST(BowieDick, IsWithinThePacksDirections)
{
    const auto exposed = packExposure(packTrace(std::vector<double>(22, 133)), {0}, directions);
    EXPECT_EQ(exposed.seconds, (Bounds{210, 230}));
    EXPECT_EQ(exposed.leastTime, Shown::met);
    EXPECT_EQ(exposed.mostTime, Shown::met);
    EXPECT_EQ(exposed.mostTemperature, Shown::met);
    EXPECT_EQ(exposed.coldest, 133);
    EXPECT_EQ(exposed.hottest, 133);
}

TEST(BowieDick, IsShortLongOrOpen)
{
    const auto answers = [](std::size_t samples) {
        const auto exposed =
            packExposure(packTrace(std::vector<double>(samples, 133)), {0}, directions);
        return std::pair(exposed.leastTime, exposed.mostTime);
    };
    EXPECT_EQ(answers(20), std::pair(Shown::open, Shown::met));   // 190 to 210 s
    EXPECT_EQ(answers(19), std::pair(Shown::notMet, Shown::met)); // 180 to 200 s
    EXPECT_EQ(answers(23), std::pair(Shown::met, Shown::met));    // 220 to 240 s
    EXPECT_EQ(answers(24), std::pair(Shown::met, Shown::open));   // 230 to 250 s
    EXPECT_EQ(answers(26), std::pair(Shown::met, Shown::notMet)); // 250 to 270 s
}

TEST(BowieDick, IsTooHotByAnySample)
{
    std::vector<double> held(22, 133);
    held[5] = 134.01;
    EXPECT_EQ(packExposure(packTrace(held), {0}, directions).mostTemperature, Shown::notMet);
    held[5] = 134;
    EXPECT_EQ(packExposure(packTrace(held), {0}, directions).mostTemperature, Shown::met);
}

TEST(BowieDick, SaysTheExtremesOfAllChannels)
{
    Trace trace = packTrace(std::vector<double>(22, 133));
    trace.channels.push_back(trace.channels[0]);
    trace.channels[2].values[7] = 132.2;
    trace.channels[2].values[9] = 133.6;
    for (const std::vector<std::size_t>& required : {std::vector<std::size_t>{0, 2}, {2, 0}}) {
        const auto exposed = packExposure(trace, required, directions);
        EXPECT_EQ(exposed.coldest, 132.2);
        EXPECT_EQ(exposed.hottest, 133.6);
    }
}

TEST(BowieDick, AddsShortTimesAgainstTheMost)
{
    // Twice two minutes with a dip between: too short in one piece, too long in all.
    std::vector<double> held(26, 133);
    held[13] = 131;
    const auto exposed = packExposure(packTrace(held), {0}, directions);
    EXPECT_EQ(exposed.leastTime, Shown::notMet);
    EXPECT_EQ(exposed.mostTime, Shown::notMet);
}

TEST(BowieDick, IsShortWhereItNeverIsHotEnough)
{
    const auto exposed = packExposure(packTrace(std::vector<double>(22, 131)), {0}, directions);
    EXPECT_EQ(exposed.leastTime, Shown::notMet);
    EXPECT_EQ(exposed.mostTime, Shown::open);
}

TEST(BowieDick, AsksOnlyWhatIsStated)
{
    const auto trace = packTrace(std::vector<double>(22, 133));
    PackDirections none;
    EXPECT_EQ(packExposure(trace, {0}, none).leastTime, Shown::notAsked);
    none.leastCelsius = 132;
    const auto exposed = packExposure(trace, {0}, none);
    EXPECT_EQ(exposed.leastTime, Shown::notAsked);
    EXPECT_EQ(exposed.mostTime, Shown::notAsked);
    EXPECT_EQ(exposed.mostTemperature, Shown::notAsked);
    PackDirections noLeast = directions;
    noLeast.leastCelsius = std::nan("");
    EXPECT_EQ(packExposure(trace, {0}, noLeast).leastTime, Shown::open);
    EXPECT_EQ(packExposure({}, {0}, directions).leastTime, Shown::open);
    EXPECT_EQ(packExposure(trace, {}, directions).leastTime, Shown::open);
}

} // namespace
} // namespace loadwarden
