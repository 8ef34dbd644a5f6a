#include "core/cycle/trace/exposure.h"
#include "core/cycle/trace/saturation.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

const double nan = std::nan("");

Band chamberBand(double least = 134, double most = 137)
{
    Band band;
    band.leastCelsius = least;
    band.mostCelsius = most;
    band.required = {0};
    return band;
}

/// Samples `step` seconds apart.
Exposure exposureOf(const std::vector<double>& celsius, double step = 60)
{
    std::vector<double> seconds;
    for (std::size_t i = 0; i < celsius.size(); ++i) {
        seconds.push_back(static_cast<double>(i) * step);
    }
    return findExposure(support::traceOf(seconds, celsius), chamberBand(), true);
}

TEST(Exposure, IsSureOnlyBetweenTheSamplesInTheBand)
{
    const Exposure exposure = exposureOf({20, 100, 134, 135, 137, 130, 80});
    EXPECT_EQ(exposure.rule, HoldRule::band);
    EXPECT_EQ(exposure.continuous, (Bounds{120, 240}));
    EXPECT_EQ(exposure.longest, (SampleRange{2, 4}));
    EXPECT_EQ(exposure.hold, (SampleRange{2, 4}));
    EXPECT_EQ(exposure.begin, (Moment{60, 120}));
    EXPECT_EQ(exposure.end, (Moment{240, 300}));
    EXPECT_TRUE(exposure.interruptions.empty());
    EXPECT_EQ(exposure.peakCelsius, 137);
    ASSERT_EQ(exposure.channels.size(), 1U);
    EXPECT_EQ(exposure.channels[0].least, 134);
    EXPECT_EQ(exposure.channels[0].greatest, 137);
    EXPECT_NEAR(exposure.channels[0].mean, (134 + 2 * 135 + 137) / 4.0, 1e-12);
    EXPECT_NEAR(exposure.channels[0].driftPerMinute, 1.5, 1e-12);
    EXPECT_TRUE(std::isnan(exposure.greatestSpread));
}

TEST(Exposure, TakesLimitsAsInclusiveButForTheRoundingOfConversion)
{
    EXPECT_EQ(exposureOf({130, 134 - 1e-10, 137 + 1e-10, 130}).continuous.least, 60);
    EXPECT_EQ(exposureOf({130, 133.9999, 134, 134, 137.0001, 130}).continuous.least, 60);
}

TEST(Exposure, OfASingleSampleHasNoSureTime)
{
    EXPECT_EQ(exposureOf({130, 135, 130}).continuous, (Bounds{0, 120}));
    EXPECT_EQ(exposureOf({130, 135, 130}).rule, HoldRule::band);
}

TEST(Exposure, HeldAboveTheBandIsWhatWasHeldThere)
{
    std::vector<double> celsius{130, 135};
    celsius.insert(celsius.end(), 100, 138);
    celsius.insert(celsius.end(), {135.5, 130});
    const Exposure above = exposureOf(celsius, 1);
    EXPECT_EQ(above.rule, HoldRule::plateau);
    EXPECT_GE(above.hold.last - above.hold.first, 99U);
    EXPECT_EQ(above.continuous.least, 0);
}

TEST(Exposure, HasNoUpperBoundWhereTheTraceBeginsOrEndsInTheBand)
{
    EXPECT_EQ(exposureOf({135, 135, 130}).continuous, (Bounds{60, unbounded}));
    EXPECT_EQ(exposureOf({130, 135, 135}).continuous, (Bounds{60, unbounded}));
    EXPECT_EQ(exposureOf({135, 135, 130}).begin, (Moment{-unbounded, 0}));
    EXPECT_EQ(exposureOf({130, 135, 135}).end, (Moment{120, unbounded}));
    EXPECT_EQ(exposureOf({135}).continuous, (Bounds{0, unbounded}));
}

TEST(Exposure, IsTheLongestContinuousTimeAndSaysWhatInterruptedIt)
{
    const Exposure exposure = exposureOf({20, 135, 135, 131, 130.5, 135, 135, 135, 135, 60});
    EXPECT_EQ(exposure.continuous, (Bounds{180, 300}));
    EXPECT_EQ(exposure.longest, (SampleRange{5, 8}));
    EXPECT_EQ(exposure.hold, (SampleRange{1, 8}));
    ASSERT_EQ(exposure.interruptions.size(), 1U);
    const Interruption& found = exposure.interruptions[0];
    EXPECT_EQ(found.cause, InterruptionCause::below);
    EXPECT_EQ(found.between, (SampleRange{2, 5}));
    EXPECT_EQ(found.seconds, (Bounds{60, 180}));
    EXPECT_EQ(found.coldest, 130.5);
    EXPECT_EQ(found.hottest, 131);
    EXPECT_EQ(exposure.channels[0].least, 130.5);
}

TEST(Exposure, CountsNothingWhereNothingWasMeasured)
{
    const Exposure lost = exposureOf({20, 135, 135, nan, 135, 135, 135, 60});
    EXPECT_EQ(lost.continuous, (Bounds{120, 420}));
    ASSERT_EQ(lost.interruptions.size(), 1U);
    EXPECT_EQ(lost.interruptions[0].cause, InterruptionCause::notMeasured);
    EXPECT_TRUE(std::isnan(lost.interruptions[0].coldest));
    EXPECT_EQ(lost.channels[0].measured, 5U);

    const Trace gap = support::traceOf({0, 60, 120, 211, 271, 331}, {20, 135, 135, 135, 135, 20});
    const Exposure apart = findExposure(gap, chamberBand(), true);
    EXPECT_EQ(apart.continuous, (Bounds{60, 331}));
    ASSERT_EQ(apart.interruptions.size(), 1U);
    EXPECT_EQ(apart.interruptions[0].cause, InterruptionCause::gap);
    EXPECT_EQ(apart.interruptions[0].seconds, (Bounds{0, 91}));
    TraceSettings patient;
    patient.mostStepSeconds = 91;
    EXPECT_EQ(findExposure(gap, chamberBand(), true, patient).continuous, (Bounds{211, 331}));
}

TEST(Exposure, KnowsTheWorstThatInterruptedIt)
{
    const auto cause = [](const std::vector<double>& between) {
        std::vector<double> celsius{20, 135, 135};
        celsius.insert(celsius.end(), between.begin(), between.end());
        celsius.insert(celsius.end(), {135, 135, 20});
        return exposureOf(celsius).interruptions.at(0).cause;
    };
    EXPECT_EQ(cause({138}), InterruptionCause::above);
    EXPECT_EQ(cause({138, nan, 133}), InterruptionCause::below);
    EXPECT_EQ(cause({nan, 138}), InterruptionCause::above);
    EXPECT_EQ(cause({nan}), InterruptionCause::notMeasured);
}

TEST(Exposure, NeedsEveryRequiredChannel)
{
    Trace trace = support::traceOf({0, 60, 120, 180, 240}, {20, 135, 135, 135, 20});
    trace.channels.push_back({"drain", ChannelRole::drainTemperature, {20, 120, 134.5, 134, 20}});
    EXPECT_EQ(findExposure(trace, chamberBand(), true).continuous, (Bounds{120, 240}));
    const Exposure both = findExposure(trace, support::bandOf(134, 137), true);
    EXPECT_EQ(both.continuous, (Bounds{60, 180}));
    EXPECT_EQ(both.greatestSpread, 1);
    EXPECT_NEAR(both.meanSpread, 0.75, 1e-12);
    EXPECT_EQ(both.channels.size(), 2U);
    // A channel that is not there, or has no role, is not measured.
    for (const std::size_t missing : {std::size_t{2}, std::size_t{7}}) {
        trace.channels.push_back({"door", ChannelRole::notUsed, {1, 1, 1, 1, 1}});
        Band band = chamberBand();
        band.required.push_back(missing);
        EXPECT_EQ(findExposure(trace, band, true).rule, HoldRule::none);
    }
    EXPECT_EQ(findExposure(trace, Band{}, true).rule, HoldRule::none);
}

TEST(Exposure, HoldsThePressureToItsLimitsWhereItIsRequired)
{
    const Trace trace = support::traceOf({0, 60, 120, 180, 240}, {20, 135, 135, 135, 20},
                                         {100, 311, 313, 309, 100});
    Band band = chamberBand();
    band.required = {0, 1};
    EXPECT_EQ(findExposure(trace, band, true).continuous.least, 120);
    band.leastKPa = 310;
    EXPECT_EQ(findExposure(trace, band, true).continuous, (Bounds{60, 180}));
    band.mostKPa = 312;
    EXPECT_EQ(findExposure(trace, band, true).continuous, (Bounds{0, 120}));
}

TEST(Exposure, IsNoDryHeatInAHotJacket)
{
    // Exposure for two minutes; then the chamber dries for five in a vacuum, its sensor at 134 °C.
    const double held = saturationPressure(135);
    const Trace trace = support::traceOf({0, 60, 120, 180, 240, 300, 360, 420, 480, 540},
                                         {20, 135, 135, 135, 110, 134, 134, 134, 134, 134},
                                         {100, held, held, held, 50, 8, 8, 8, 8, 0.01});
    const Exposure steam = findExposure(trace, chamberBand(), true);
    EXPECT_EQ(steam.continuous, (Bounds{120, 240}));
    EXPECT_TRUE(steam.interruptions.empty());
    EXPECT_EQ(findExposure(trace, chamberBand(), false).continuous.least, 240);
    // Without a pressure that was measured it cannot be told.
    Trace lost = trace;
    lost.channels[1].values.assign(lost.samples(), nan);
    EXPECT_EQ(findExposure(lost, chamberBand(), true).continuous.least, 240);
    // Superheat within the limit stays exposure.
    TraceSettings settings;
    Trace superheated = trace;
    for (double& value : superheated.channels[1].values) {
        value = value == held ? saturationPressure(135 - settings.leavesSteamKelvin + 0.1) : value;
    }
    EXPECT_EQ(findExposure(superheated, chamberBand(), true).continuous.least, 120);
    settings.leavesSteamKelvin -= 0.2;
    EXPECT_EQ(findExposure(superheated, chamberBand(), true, settings).rule, HoldRule::none);
}

TEST(Exposure, LeavesOutTheTopOfAPulseButNoFirstAttempt)
{
    // A pulse that just touches the band, a fall of 40 K, then the exposure.
    const Exposure pulsed = exposureOf({20, 134.1, 95, 135, 135, 135, 20});
    EXPECT_EQ(pulsed.hold, (SampleRange{3, 5}));
    EXPECT_TRUE(pulsed.interruptions.empty());
    // A minute in the band before the same fall was an exposure that broke off.
    const Exposure broken = exposureOf({20, 135, 135, 95, 135, 135, 135, 20});
    EXPECT_EQ(broken.hold, (SampleRange{1, 6}));
    EXPECT_EQ(broken.interruptions.size(), 1U);
    // Exactly as long as makes a hold, and just shorter.
    EXPECT_EQ(exposureOf({20, 135, 135, 95, 135, 135, 135, 20}, 30).interruptions.size(), 1U);
    EXPECT_EQ(exposureOf({20, 135, 135, 95, 135, 135, 135, 20}, 29).interruptions.size(), 0U);
    // Whatever comes back after the longest run belongs to it.
    EXPECT_EQ(exposureOf({20, 135, 135, 135, 95, 134.1, 20}).interruptions.size(), 1U);
    // A shallow fall after a single sample is an interruption.
    EXPECT_EQ(exposureOf({20, 135, 124, 135, 135, 20}).interruptions.size(), 1U);
    EXPECT_EQ(exposureOf({20, 135, 123.9, 135, 135, 20}).interruptions.size(), 0U);
}

TEST(Exposure, TakesNoiseAtItsEdgesForNoInterruption)
{
    // Each second: through the limit upwards and downwards with noise of a tenth.
    std::vector<double> celsius{133, 133.9, 134.05, 133.95, 134.1, 133.98, 134};
    celsius.insert(celsius.end(), 60, 134.6);
    celsius.insert(celsius.end(), {133.95, 134.02, 133.9, 134, 133});
    const Exposure noisy = exposureOf(celsius, 1);
    EXPECT_TRUE(noisy.interruptions.empty());
    EXPECT_EQ(noisy.hold, (SampleRange{6, 66}));
    EXPECT_EQ(noisy.continuous, (Bounds{60, 62}));
    // A dip that is more than noise, even right after the beginning or before the end.
    celsius[5] = 133.4;
    EXPECT_EQ(exposureOf(celsius, 1).interruptions.size(), 1U);
    celsius[69] = 133.4;
    EXPECT_EQ(exposureOf(celsius, 1).interruptions.size(), 3U);
    // The least of dips within a hold is one.
    celsius[35] = 133.99;
    EXPECT_EQ(exposureOf(celsius, 1).continuous.least, 30);
    // An overshoot right after the beginning.
    std::vector<double> hot{130, 134.5, 137.6};
    hot.insert(hot.end(), 60, 136);
    hot.push_back(130);
    EXPECT_EQ(exposureOf(hot, 1).interruptions.at(0).cause, InterruptionCause::above);
    hot[2] = 137.2;
    EXPECT_TRUE(exposureOf(hot, 1).interruptions.empty());
}

TEST(Exposure, FallsBackToThePlateauWhereTheBandIsNeverReached)
{
    const Exposure low = exposureOf({20, 120, 131, 132, 131.5, 131, 129, 60});
    EXPECT_EQ(low.rule, HoldRule::plateau);
    EXPECT_EQ(low.continuous, (Bounds{0, 60}));
    EXPECT_EQ(low.hold, (SampleRange{2, 5}));
    EXPECT_EQ(low.begin, (Moment{60, 120}));
    EXPECT_EQ(low.end, (Moment{300, 360}));
    EXPECT_EQ(low.channels[0].greatest, 132);
    EXPECT_TRUE(low.interruptions.empty());
    const Exposure high = exposureOf({20, 138, 139, 138, 60});
    EXPECT_EQ(high.rule, HoldRule::plateau);
    EXPECT_EQ(high.hold, (SampleRange{1, 3}));
    EXPECT_EQ(high.continuous.least, 0);
    const Exposure throughout = exposureOf({132, 132, 131});
    EXPECT_EQ(throughout.hold, (SampleRange{0, 2}));
    EXPECT_EQ(throughout.begin, (Moment{-unbounded, 0}));
    EXPECT_EQ(throughout.end, (Moment{120, unbounded}));
    // Far below there is none, only what the trace's samples leave open.
    const Exposure cold = exposureOf({20, 60, 118.9, 60});
    EXPECT_EQ(cold.rule, HoldRule::none);
    EXPECT_EQ(cold.peakCelsius, 118.9);
    EXPECT_EQ(cold.continuous, (Bounds{0, 60}));
}

TEST(Exposure, IsTotal)
{
    EXPECT_EQ(exposureOf({}).rule, HoldRule::none);
    EXPECT_EQ(exposureOf({}).continuous, (Bounds{0, 0}));
    EXPECT_EQ(exposureOf({nan, nan}).rule, HoldRule::none);
    EXPECT_EQ(exposureOf({nan, nan}).continuous, (Bounds{0, unbounded}));
    EXPECT_TRUE(std::isnan(exposureOf({nan}).peakCelsius));
    EXPECT_EQ(exposureOf({HUGE_VAL, 135, -HUGE_VAL}).continuous.least, 0);
    // A channel that is shorter than the trace was not measured behind its end.
    Trace trace = support::traceOf({0, 60, 120}, {135, 135});
    EXPECT_EQ(findExposure(trace, chamberBand(), true).continuous, (Bounds{60, unbounded}));
    // Without limits everything measured is in the band.
    Band open;
    open.required = {0};
    EXPECT_EQ(findExposure(trace, open, false).continuous, (Bounds{60, unbounded}));
}

} // namespace
} // namespace loadwarden
