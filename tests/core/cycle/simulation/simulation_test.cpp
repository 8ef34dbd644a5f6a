#include "core/cycle/simulation/saturation_line.h"
#include "core/cycle/simulation/simulation.h"
#include "tests/core/cycle/simulation/random_cycles.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

using namespace simulation;
using testing::cleanCycle;
using testing::faultyCycle;

// IAPWS-95 by the general-purpose package python3-iapws 1.5.3-1, kPa absolute.
TEST(SimulatedSteam, LiesOnTheSaturationLine)
{
    EXPECT_NEAR(saturationKPa(100), 101.4180, 0.005);
    EXPECT_NEAR(saturationKPa(110), 143.3787, 0.01);
    EXPECT_NEAR(saturationKPa(120), 198.6744, 0.015);
    for (double celsius = 1; celsius < 200; celsius += 1) {
        EXPECT_NEAR(saturationCelsius(saturationKPa(celsius)), celsius, 1e-7);
    }
}

TEST(SimulatedCycle, IsTheSameBySameSeed)
{
    const Cycle a = simulate(cleanCycle(7));
    const Cycle b = simulate(cleanCycle(7));
    EXPECT_EQ(a.trace.channels[0].values, b.trace.channels[0].values);
    EXPECT_NE(a.trace.channels[0].values, simulate(cleanCycle(8)).trace.channels[0].values);
}

/// What the settings ask is what the truth says, in any clean cycle.
TEST(SimulatedCycle, WithoutFaultDoesWhatItIsSetTo)
{
    for (std::uint64_t seed = 1; seed <= 100; ++seed) {
        const Settings settings = cleanCycle(seed);
        const auto [trace, truth] = simulate(settings);
        const auto of = ::testing::Message() << "seed " << seed;
        ASSERT_GE(truth.exposure().length(), settings.exposureSeconds) << of;
        ASSERT_NEAR(truth.timed->length(), settings.exposureSeconds, 2 * Truth::step) << of;
        ASSERT_GE(truth.drying.length(), settings.dryingSeconds - Truth::step) << of;
        ASSERT_LT(std::abs(truth.saturationMean), 0.5) << of;
        ASSERT_EQ(truth.pulses.size(), settings.program == Program::gravity
                                           ? 0U
                                           : static_cast<std::size_t>(settings.pulses))
            << of;
        ASSERT_LT(truth.end, 5 * 3600) << of;
        for (const TraceChannel& channel : trace.channels) {
            ASSERT_EQ(channel.values.size(), trace.samples()) << of;
        }
        ASSERT_TRUE(std::ranges::is_sorted(trace.seconds)) << of;
    }
}

TEST(SimulatedFault, ShowsInTheTruth)
{
    for (std::uint64_t seed = 1; seed <= 15; ++seed) {
        const Settings settings = cleanCycle(seed);
        const Truth clean = simulate(settings).truth;
        const auto with = [&](FaultKind kind) {
            return simulate(faultyCycle(seed, kind, 1)).truth;
        };
        const auto size = [&](FaultKind kind) {
            return faultyCycle(seed, kind, 1).faults.front().size;
        };
        const auto of = ::testing::Message() << "seed " << seed;
        ASSERT_NEAR(with(FaultKind::shortExposure).timed->length(),
                    settings.exposureSeconds - size(FaultKind::shortExposure), 2 * Truth::step)
            << of;
        ASSERT_GE(with(FaultKind::interruptedExposure).inBand.size(), clean.inBand.size() + 1)
            << of;
        ASSERT_EQ(with(FaultKind::lowTemperature).exposure().length(), 0) << of;
        ASSERT_LT(with(FaultKind::highTemperature).exposure().length(), 120) << of;
        ASSERT_NEAR(with(FaultKind::residualAir).saturationMean, -2.4, 0.3) << of;
        ASSERT_NEAR(with(FaultKind::superheat).saturationMean, 2.4, 0.3) << of;
        // Without a vacuum the air that leaves through the drain may take longer than the heating.
        ASSERT_GT(with(FaultKind::slowHeating).heating.length(),
                  (settings.program == Program::prevacuum ? 1.5 : 0.99) * clean.heating.length())
            << of;
        ASSERT_NEAR(with(FaultKind::shortDrying).drying.length(),
                    clean.drying.length() - size(FaultKind::shortDrying), 2 * Truth::step)
            << of;
    }
}

TEST(SimulatedFault, OfASensorIsASpanWithoutValues)
{
    Settings settings = cleanCycle(3);
    settings.samplingSeconds = 1;
    settings.faults.push_back({.kind = FaultKind::sensorDropout, .size = 30});
    const Trace trace = simulate(settings).trace;
    const auto isOut = [](double value) { return std::isnan(value); };
    EXPECT_NEAR(static_cast<double>(std::ranges::count_if(trace.channels[1].values, isOut)), 30, 1);
    EXPECT_EQ(std::ranges::count_if(trace.channels[0].values, isOut), 0);
}

TEST(SimulatedLeak, IsAsLargeAsItWasSet)
{
    Settings settings;
    settings.program = Program::leakTest;
    EXPECT_NEAR(simulate(settings).truth.leakKPaAMinute, 0, 1e-6);
    settings.faults.push_back({.kind = FaultKind::leak, .size = 0.13});
    EXPECT_NEAR(simulate(settings).truth.leakKPaAMinute, 0.13, 0.005);
}

} // namespace
} // namespace loadwarden
