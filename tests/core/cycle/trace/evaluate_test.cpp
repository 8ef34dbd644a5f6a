#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/saturation.h"
#include "trace_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

using testing::ElementsAre;
using testing::IsEmpty;

const double nan = std::nan("");

// 134 °C for 3 min with a band of 3 K: UK Central Sterilising Club handbook 2025 (the band:
// memory).
AskedOfTrace askedOf134()
{
    AskedOfTrace asked;
    asked.airRemoval = AirRemoval::prevacuum;
    asked.band = support::bandOf(134, 137);
    asked.leastExposureSeconds = 180;
    asked.leastDryingSeconds = 20 * 60;
    asked.atmosphereKPa = support::atmosphere;
    return asked;
}

Trace prevacuum(double step = 1)
{
    return support::chamberOf(support::prevacuumCourse(), step, 5);
}

/// Changes a channel's values between two moments.
Trace changed(Trace trace, std::size_t channel, double from, double to, double by)
{
    for (std::size_t i = 0; i < trace.samples(); ++i) {
        if (trace.seconds[i] >= from && trace.seconds[i] <= to) {
            trace.channels[channel].values[i] += by;
        }
    }
    return trace;
}

TEST(Evaluate, FindsNothingWrongWithACleanCycle)
{
    const auto found = evaluate(prevacuum(), askedOf134());
    EXPECT_THAT(found.problems, IsEmpty());
    EXPECT_EQ(found.exposureLeast, Shown::met);
    EXPECT_EQ(found.exposureMost, Shown::notAsked);
    EXPECT_EQ(found.uninterrupted, Shown::met);
    EXPECT_EQ(found.notBelow, Shown::met);
    EXPECT_EQ(found.notAbove, Shown::met);
    EXPECT_EQ(found.saturated, Shown::met);
    EXPECT_EQ(found.dryingLeast, Shown::met);
    EXPECT_EQ(found.phases.pulses.size(), 3U);
    ASSERT_EQ(found.lethality.size(), 2U);
    EXPECT_GT(found.lethality[0].f0.whole.minutes, found.lethality[0].f0.exposure.minutes);
    // Four minutes at 134.8 °C.
    EXPECT_GT(found.coldest.exposure.minutes, 3.9 * lethalRate(134.8, {}));
    EXPECT_LT(found.coldest.exposure.minutes, 4.1 * lethalRate(134.8, {}));
    ASSERT_EQ(found.cumulative.size(), prevacuum().samples());
    EXPECT_NEAR(found.cumulative.back() / found.coldest.whole.minutes, 1, 1e-12);
    EXPECT_LE(found.coldest.whole.minutes, found.lethality[1].f0.whole.minutes);
    EXPECT_FALSE(found.biological || found.bioburden || found.pack || found.leak);
}

TEST(Evaluate, MeetsALimitOnlyByTheLowerBound)
{
    AskedOfTrace asked = askedOf134();
    const Bounds sure = evaluate(prevacuum(60), asked).exposure.continuous;
    ASSERT_LT(sure.least, sure.most);
    asked.leastExposureSeconds = sure.least;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureLeast, Shown::met);
    asked.leastExposureSeconds = sure.least + 1;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureLeast, Shown::open);
    // What noise at the edges may take away is not shown to be short.
    asked.leastExposureSeconds = sure.most + asked.settings.timeDoubtSeconds;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureLeast, Shown::open);
    asked.leastExposureSeconds += 0.01;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureLeast, Shown::notMet);
    asked.leastExposureSeconds = nan;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureLeast, Shown::notAsked);
    asked.mostExposureSeconds = 120;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureMost, Shown::notMet);
    asked.mostExposureSeconds = sure.least + 1;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureMost, Shown::open);
    asked.mostExposureSeconds = sure.least - 1;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureMost, Shown::notMet);
    asked.mostExposureSeconds = 600;
    EXPECT_EQ(evaluate(prevacuum(60), asked).exposureMost, Shown::met);
}

TEST(Evaluate, SeesAnInterruptionOfOneChannel)
{
    const auto found = evaluate(changed(prevacuum(), 1, 840, 845, -2), askedOf134());
    EXPECT_EQ(found.uninterrupted, Shown::notMet);
    EXPECT_EQ(found.notBelow, Shown::notMet);
    EXPECT_EQ(found.notAbove, Shown::met);
    EXPECT_EQ(found.exposureLeast, Shown::notMet);
    EXPECT_EQ(found.exposure.interruptions.size(), 1U);
    const auto hot = evaluate(changed(prevacuum(), 0, 840, 845, 3), askedOf134());
    EXPECT_EQ(hot.notAbove, Shown::notMet);
    EXPECT_EQ(hot.notBelow, Shown::met);
    EXPECT_EQ(hot.uninterrupted, Shown::notMet);
}

TEST(Evaluate, LeavesOpenWhatASensorDidNotMeasure)
{
    const auto found = evaluate(changed(prevacuum(), 1, 840, 845, nan), askedOf134());
    EXPECT_EQ(found.uninterrupted, Shown::open);
    EXPECT_EQ(found.notBelow, Shown::open);
    EXPECT_EQ(found.notAbove, Shown::open);
    EXPECT_EQ(found.exposureLeast, Shown::open);
    EXPECT_EQ(found.lethality[1].f0.whole.gaps, 1U);
    // The coldest channel may have been the one that was lost: nothing is counted meanwhile.
    EXPECT_EQ(found.coldest.whole.gaps, 1U);
    EXPECT_EQ(found.lethality[0].f0.whole.gaps, 0U);
    EXPECT_EQ(found.coldest.whole.leftOutSeconds, 7);
}

TEST(Evaluate, SeesTheWholeHoldBelowTheBand)
{
    AskedOfTrace asked = askedOf134();
    asked.band = support::bandOf(135.5, 138);
    const auto found = evaluate(prevacuum(), asked);
    EXPECT_EQ(found.exposure.rule, HoldRule::plateau);
    EXPECT_EQ(found.exposureLeast, Shown::notMet);
    EXPECT_EQ(found.uninterrupted, Shown::notMet);
    EXPECT_EQ(found.notBelow, Shown::notMet);
    EXPECT_EQ(found.notAbove, Shown::met);
}

TEST(Evaluate, HoldsTemperatureToSaturationBothWays)
{
    // 2 K through the hold: EN 285 and HTM (memory). Pressure of 136.7 and of 133.0 °C, so that
    // measured is 1.9 K below and 1.8 K above.
    AskedOfTrace asked = askedOf134();
    const auto answer = [&](double celsius) {
        const double by = saturationPressure(celsius) - saturationPressure(134.8);
        return evaluate(changed(prevacuum(), 2, 725, 955, by), asked).saturated;
    };
    EXPECT_EQ(answer(136.7), Shown::met);
    EXPECT_EQ(answer(136.9), Shown::notMet);
    EXPECT_EQ(answer(133.0), Shown::met);
    EXPECT_EQ(answer(132.7), Shown::notMet);
    asked.saturationKelvin = 3;
    EXPECT_EQ(answer(136.9), Shown::met);
    asked.saturationKelvin = nan;
    EXPECT_EQ(answer(136.9), Shown::notAsked);
}

TEST(Evaluate, SaysDryingShort)
{
    AskedOfTrace asked = askedOf134();
    asked.leastDryingSeconds = 30 * 60;
    EXPECT_EQ(evaluate(prevacuum(), asked).dryingLeast, Shown::notMet);
    // Broken off while it dried: how long it went on is not in the trace.
    Trace cut = prevacuum();
    cut.seconds.resize(1'500);
    for (TraceChannel& channel : cut.channels) {
        channel.values.resize(1'500);
    }
    EXPECT_EQ(evaluate(cut, asked).dryingLeast, Shown::open);
}

TEST(Evaluate, SaysWhatTheLethalityDoesToTheLoadsIndicators)
{
    AskedOfTrace asked = askedOf134();
    asked.biological = Population{1e6, 1.5, {121.1, 10}};
    asked.bioburden = Population{100, 1.0, {121.1, 10}};
    asked.indicators = {{{121, 16.5}, {135, 1.2}}, {{134, 3.5}}};
    const auto found = evaluate(prevacuum(), asked);
    ASSERT_TRUE(found.biological && found.bioburden);
    EXPECT_NEAR(found.biological->exposure.logReduction, found.coldest.exposure.minutes / 1.5,
                1e-9);
    EXPECT_GT(found.biological->whole.logReduction, found.biological->exposure.logReduction);
    EXPECT_EQ(found.biological->whole.caveat, Caveat::chamberIsNotPack);
    EXPECT_LT(found.bioburden->whole.chanceOfAny, 1e-30);
    ASSERT_EQ(found.indicators.size(), 2U);
    ASSERT_TRUE(found.indicators[0]);
    EXPECT_GT(found.indicators[0]->fraction, 3.5 / 1.3);
    EXPECT_FALSE(found.indicators[1]);
}

TEST(Evaluate, HoldsABowieDickCycleToItsPack)
{
    AskedOfTrace asked = askedOf134();
    asked.pack = PackDirections{134, 136, 210, 260};
    const auto found = evaluate(prevacuum(), asked);
    ASSERT_TRUE(found.pack);
    EXPECT_EQ(found.pack->leastTime, Shown::met);
    EXPECT_EQ(found.pack->mostTemperature, Shown::met);
}

TEST(Evaluate, JudgesALeakTestByTheWorseRate)
{
    AskedOfTrace asked;
    asked.isLeakTest = true;
    const auto leaking = [](double mbar, double minutes) {
        const double end = 200 + minutes * 60;
        return support::chamberOf(
            {{0, 101.3}, {200, 4}, {end, 4 + mbar / 10 * minutes}, {end + 60, 101.3}}, 1);
    };
    // At most 1.3 mbar/min: HTM 2010 and EN 285 practice texts, restated.
    EXPECT_EQ(evaluate(leaking(1.29, 16), asked).leakMost, Shown::met);
    EXPECT_EQ(evaluate(leaking(1.31, 16), asked).leakMost, Shown::notMet);
    EXPECT_EQ(evaluate(leaking(0.5, 14), asked).leakMost, Shown::open);
    EXPECT_EQ(evaluate(leaking(1.31, 14), asked).leakMost, Shown::notMet);
    EXPECT_THAT(evaluate(leaking(0.5, 16), asked).problems, IsEmpty());
    EXPECT_THAT(evaluate(support::traceOf({0, 1}, {20, 20}), asked).problems,
                ElementsAre(TraceProblem::noPressure));
    EXPECT_EQ(evaluate(support::traceOf({0, 1}, {20, 20}), asked).leakMost, Shown::open);
}

TEST(Evaluate, SaysWhyATraceCannotBeUsed)
{
    const AskedOfTrace asked = askedOf134();
    const auto problems = [&](const Trace& trace) { return evaluate(trace, asked).problems; };
    EXPECT_THAT(problems({}), ElementsAre(TraceProblem::noSamples, TraceProblem::requiredMissing,
                                          TraceProblem::noPressure));
    Trace trace = prevacuum();
    trace.seconds[5] = trace.seconds[4];
    EXPECT_THAT(problems(trace), ElementsAre(TraceProblem::timesNotRising));
    trace.seconds[5] = nan;
    EXPECT_THAT(problems(trace), ElementsAre(TraceProblem::timesNotRising));
    trace = prevacuum();
    trace.seconds.back() = HUGE_VAL;
    EXPECT_THAT(problems(trace), ElementsAre(TraceProblem::timesNotRising));
    Trace single = support::traceOf({nan}, {135}, {313});
    EXPECT_THAT(problems(single), ElementsAre(TraceProblem::timesNotRising));
    trace = prevacuum();
    trace.channels[2].values.pop_back();
    EXPECT_THAT(problems(trace), ElementsAre(TraceProblem::lengthsDiffer));
    const auto unusable = evaluate(trace, asked);
    for (const Shown shown : {unusable.exposureLeast, unusable.uninterrupted, unusable.notBelow,
                              unusable.notAbove, unusable.dryingLeast, unusable.saturated}) {
        EXPECT_EQ(shown, Shown::open);
    }
    EXPECT_EQ(unusable.exposureMost, Shown::notAsked);
}

TEST(Evaluate, GoesOnWithoutPressureOrAtmosphere)
{
    AskedOfTrace asked = askedOf134();
    asked.atmosphereKPa = nan;
    const auto nowhere = evaluate(prevacuum(), asked);
    EXPECT_THAT(nowhere.problems, ElementsAre(TraceProblem::noAtmosphere));
    EXPECT_EQ(nowhere.exposureLeast, Shown::met);
    EXPECT_EQ(nowhere.dryingLeast, Shown::open);
    Trace trace = prevacuum();
    trace.channels.pop_back();
    const auto blind = evaluate(trace, askedOf134());
    EXPECT_THAT(blind.problems, ElementsAre(TraceProblem::noPressure));
    EXPECT_EQ(blind.exposureLeast, Shown::met);
    EXPECT_EQ(blind.saturated, Shown::open);
    EXPECT_EQ(blind.dryingLeast, Shown::open);
    trace.channels[1].role = ChannelRole::notUsed;
    const auto lacking = evaluate(trace, askedOf134());
    EXPECT_THAT(lacking.problems,
                ElementsAre(TraceProblem::requiredMissing, TraceProblem::noPressure));
    EXPECT_NE(lacking.exposureLeast, Shown::met);
}

TEST(Evaluate, AsksNoSteamOfOtherMethods)
{
    // Dry heat, 160 °C for 120 min: JADA 122 (1991), CDC.
    AskedOfTrace asked;
    asked.isSteam = false;
    asked.band.leastCelsius = 160;
    asked.band.required = {0};
    asked.leastExposureSeconds = 7'200;
    std::vector<double> seconds;
    std::vector<double> celsius;
    for (int i = 0; i < 180; ++i) {
        seconds.push_back(i * 60.0);
        celsius.push_back(i < 30 || i > 151 ? 100 : 161);
    }
    const auto found = evaluate(support::traceOf(seconds, celsius), asked);
    EXPECT_THAT(found.problems, IsEmpty());
    EXPECT_EQ(found.exposureLeast, Shown::met);
    EXPECT_EQ(found.saturated, Shown::notAsked);
    EXPECT_TRUE(found.phases.phases.empty());
}

} // namespace
} // namespace loadwarden
