#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/saturation.h"
#include "core/cycle/trace/turning_points.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

constexpr LethalReference f0{121.1, 10};
const double nan = std::nan("");

/// From `least` up to below `most`, as wide in the first tests as in the last.
template <class Number>
Number drawn(Number least, Number most)
{
    return *rc::gen::resize(rc::kNominalSize, rc::gen::inRange(least, most));
}

std::vector<double> times(std::size_t samples, int mostStep)
{
    std::vector<double> seconds;
    double now = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        seconds.push_back(now);
        now += drawn(1, mostStep + 1);
    }
    return seconds;
}

/// Tenths of a degree, with a part of NaN.
std::vector<double> temperatures(std::size_t samples, int least, int most, int lost)
{
    std::vector<double> celsius;
    for (std::size_t i = 0; i < samples; ++i) {
        const bool isLost = drawn(0, 100) < lost;
        celsius.push_back(isLost ? nan : drawn(least, most + 1) / 10.0);
    }
    return celsius;
}

/// One required channel around a band of 134 to 137 °C, some values lost, some steps too long.
Trace anyTrace()
{
    const auto samples = drawn<std::size_t>(1, 40);
    Trace trace;
    trace.seconds = times(samples, 100);
    trace.channels.push_back(
        {"chamber", ChannelRole::chamberTemperature, temperatures(samples, 1'325, 1'380, 5)});
    return trace;
}

Band chamberBand()
{
    Band band;
    band.leastCelsius = 134;
    band.mostCelsius = 137;
    band.required = {0};
    return band;
}

Bounds continuous(const Trace& trace)
{
    return findExposure(trace, chamberBand(), true).continuous;
}

Trace without(const Trace& trace, std::size_t sample)
{
    Trace thinned = trace;
    const auto place = static_cast<std::ptrdiff_t>(sample);
    thinned.seconds.erase(thinned.seconds.begin() + place);
    for (TraceChannel& channel : thinned.channels) {
        channel.values.erase(channel.values.begin() + place);
    }
    return thinned;
}

std::size_t anySample(const Trace& trace)
{
    return drawn<std::size_t>(0, trace.samples());
}

bool isNear(double a, double b)
{
    return std::abs(a - b) <= 1e-12 * std::max(std::abs(a), std::abs(b));
}

RC_GTEST_PROP(LethalityProperties, IsTheSumOfItsParts, ())
{
    const auto samples = drawn<std::size_t>(1, 200);
    const auto seconds = times(samples, 120);
    const auto celsius = temperatures(samples, 200, 1'400, 3);
    const auto at = drawn<std::size_t>(0, samples);
    const std::span<const double> t(seconds);
    const std::span<const double> c(celsius);
    const Lethality whole = lethality(t, c, f0);
    const Lethality before = lethality(t.first(at + 1), c.first(at + 1), f0);
    const Lethality after = lethality(t.subspan(at), c.subspan(at), f0);
    RC_ASSERT(isNear(whole.minutes, before.minutes + after.minutes));
    RC_ASSERT(isNear(whole.leftOutSeconds, before.leftOutSeconds + after.leftOutSeconds));
    const auto cumulative = cumulativeLethality(t, c, f0);
    RC_ASSERT(std::ranges::is_sorted(cumulative));
    RC_ASSERT(isNear(cumulative[at], before.minutes));
    RC_ASSERT(isNear(cumulative.back(), whole.minutes));
}

RC_GTEST_PROP(LethalityProperties, DoesNotChangeBySamplesOnAStraightLineOfTheRate, ())
{
    auto seconds = times(drawn<std::size_t>(2, 50), 60);
    auto celsius = temperatures(seconds.size(), 200, 1'400, 0);
    const double before = lethality(seconds, celsius, f0).minutes;
    const auto at = drawn<std::size_t>(1, seconds.size());
    const double part = drawn(1, 100) / 100.0;
    const double rate =
        (1 - part) * lethalRate(celsius[at - 1], f0) + part * lethalRate(celsius[at], f0);
    const auto place = static_cast<std::ptrdiff_t>(at);
    seconds.insert(seconds.begin() + place, (1 - part) * seconds[at - 1] + part * seconds[at]);
    celsius.insert(celsius.begin() + place, 121.1 + 10 * std::log10(rate));
    RC_ASSERT(std::abs(lethality(seconds, celsius, f0).minutes - before) <= 1e-11 * before);
}

RC_GTEST_PROP(LethalityProperties, GrowsWithTemperatureAndNeverByWhatIsLost, ())
{
    const auto seconds = times(drawn<std::size_t>(2, 60), 100);
    auto celsius = temperatures(seconds.size(), 200, 1'400, 3);
    const double before = lethality(seconds, celsius, f0).minutes;
    const auto at = drawn<std::size_t>(0, seconds.size());
    auto hotter = celsius;
    hotter[at] += 1;
    RC_ASSERT(lethality(seconds, hotter, f0).minutes >= before * (1 - 1e-14));
    celsius[at] = nan;
    RC_ASSERT(lethality(seconds, celsius, f0).minutes <= before * (1 + 1e-14));
}

RC_GTEST_PROP(LethalityProperties, IsKillingThatMultiplies, ())
{
    // Two treatments one after the other reduce as their sum does.
    const double first = drawn(0, 10'000) / 1'000.0;
    const double second = drawn(0, 10'000) / 1'000.0;
    const Population spores{1e6, 1.5, f0};
    const Population rest{inactivate(spores, first).survivors, 1.5, f0};
    const double together = inactivate(spores, first + second).survivors;
    RC_ASSERT(std::abs(inactivate(rest, second).survivors / together - 1) < 1e-12);
    const double chance = inactivate(spores, first).chanceOfAny;
    RC_ASSERT(chance >= inactivate(spores, first + second).chanceOfAny);
    RC_ASSERT(chance <= 1);
}

RC_GTEST_PROP(SaturationProperties, GoesThereAndBack, ())
{
    const double celsius = drawn(0, 373'900) / 1'000.0;
    RC_ASSERT(std::abs(saturationTemperature(saturationPressure(celsius)) - celsius) < 1e-6);
    RC_ASSERT(saturationPressure(celsius + 0.01) > saturationPressure(celsius));
}

RC_GTEST_PROP(ExposureProperties, HasALowerBoundThatNothingBadRaises, ())
{
    const Trace trace = anyTrace();
    const Bounds before = continuous(trace);
    RC_ASSERT(before.least <= before.most);
    Trace worse = trace;
    double& value = worse.channels[0].values[anySample(trace)];
    value = *rc::gen::element(nan, 20.0, 133.9, 137.1, 200.0, -5.0);
    RC_ASSERT(continuous(worse).least <= before.least);
}

RC_GTEST_PROP(ExposureProperties, IsNotLongerByFewerSamplesInTheBand, ())
{
    const Trace trace = anyTrace();
    const auto states = sampleStates(trace, chamberBand(), true, {});
    std::vector<std::size_t> inBand;
    for (std::size_t i = 0; i < states.size(); ++i) {
        if (states[i] == SampleState::inBand) {
            inBand.push_back(i);
        }
    }
    RC_PRE(!inBand.empty());
    const auto at = inBand[drawn<std::size_t>(0, inBand.size())];
    RC_ASSERT(continuous(without(trace, at)).least <= continuous(trace).least);
}

RC_GTEST_PROP(ExposureProperties, OfOneStayIsNotLongerByFewerSamplesAnywhere, ())
{
    const auto samples = drawn<std::size_t>(3, 60);
    const auto first = drawn<std::size_t>(0, samples);
    const auto last = drawn<std::size_t>(first, samples);
    Trace trace;
    trace.seconds = times(samples, 45);
    std::vector<double> celsius(samples, 120);
    std::fill(celsius.begin() + static_cast<std::ptrdiff_t>(first),
              celsius.begin() + static_cast<std::ptrdiff_t>(last) + 1, 135);
    trace.channels.push_back({"chamber", ChannelRole::chamberTemperature, celsius});
    Bounds before = continuous(trace);
    while (trace.samples() > 2) {
        trace = without(trace, anySample(trace));
        const Bounds now = continuous(trace);
        RC_ASSERT(now.least <= before.least);
        // What was truly there stays between the bounds where it is still seen.
        if (now.least > 0) {
            RC_ASSERT(now.most >= before.least);
        }
        before.least = now.least;
    }
}

RC_GTEST_PROP(ExposureProperties, DoesNotDependOnWhenTheTraceBegan, ())
{
    const Trace trace = anyTrace();
    Trace later = trace;
    for (double& second : later.seconds) {
        second += 4'096;
    }
    RC_ASSERT(continuous(later) == continuous(trace));
}

RC_GTEST_PROP(ExposureProperties, IsMadeOfRunsAndInterruptions, ())
{
    const Trace trace = anyTrace();
    const Exposure exposure = findExposure(trace, chamberBand(), true);
    RC_PRE(exposure.rule == HoldRule::band);
    const auto states = sampleStates(trace, chamberBand(), true, {});
    const auto& seconds = trace.seconds;
    std::size_t at = exposure.hold.first;
    double longest = 0;
    for (const Interruption& each : exposure.interruptions) {
        longest = std::max(longest, seconds[each.between.first] - seconds[at]);
        RC_ASSERT(each.between.first < each.between.last);
        RC_ASSERT(states[each.between.first] == SampleState::inBand);
        RC_ASSERT(states[each.between.last] == SampleState::inBand);
        RC_ASSERT(each.seconds.least <= each.seconds.most);
        RC_ASSERT((each.cause == InterruptionCause::gap)
                  == (each.between.last == each.between.first + 1));
        at = each.between.last;
    }
    longest = std::max(longest, seconds[exposure.hold.last] - seconds[at]);
    RC_ASSERT(longest == exposure.continuous.least);
    RC_ASSERT(exposure.hold.first <= exposure.longest.first);
    RC_ASSERT(exposure.longest.last <= exposure.hold.last);
}

/// A course of pressure that wanders, and temperatures of its steam or something else.
Trace wanderingTrace()
{
    const auto samples = drawn<std::size_t>(1, 60);
    Trace trace;
    trace.seconds = times(samples, 100);
    std::vector<double> kPa;
    std::vector<double> chamber;
    std::vector<double> drain;
    for (std::size_t i = 0; i < samples; ++i) {
        kPa.push_back(*rc::gen::element(nan, 4.0, 8.0, 60.0, 101.3, 105.0, 150.0, 220.0, 305.0,
                                        310.0, 320.0, -3.0, HUGE_VAL));
        const double boils = saturationTemperature(kPa.back());
        chamber.push_back(*rc::gen::element(boils, boils, boils + 1, 134.5, 60.0, nan));
        drain.push_back(*rc::gen::element(boils, boils - 1, 135.0, HUGE_VAL));
    }
    trace.channels = {{"chamber", ChannelRole::chamberTemperature, chamber},
                      {"drain", ChannelRole::drainTemperature, drain},
                      {"pressure", ChannelRole::chamberPressure, kPa}};
    return trace;
}

RC_GTEST_PROP(PhasesProperties, FollowEachOtherWithoutHoles, ())
{
    const Trace trace = wanderingTrace();
    Band band = chamberBand();
    if (drawn(0, 2) == 1) {
        band.required.push_back(1);
    }
    const auto airRemoval =
        *rc::gen::element(AirRemoval::gravity, AirRemoval::prevacuum,
                          AirRemoval::steamFlushPressurePulse, AirRemoval::unknown);
    const Exposure exposure = findExposure(trace, band, true);
    const Phases found = findPhases(trace, band, exposure, airRemoval, 101.325);
    RC_ASSERT(found.phases.empty() == (exposure.rule == HoldRule::none));
    RC_ASSERT(found.phases.empty() || found.find(PhaseKind::exposure) != nullptr);
    for (std::size_t i = 0; i < found.phases.size(); ++i) {
        const TracePhase& phase = found.phases[i];
        RC_ASSERT(phase.seconds.least >= 0);
        RC_ASSERT(phase.seconds.least <= phase.seconds.most);
        RC_ASSERT(phase.begin.at.earliest <= phase.begin.at.latest);
        RC_ASSERT(phase.end.at.earliest <= phase.end.at.latest);
        if (i > 0) {
            RC_ASSERT(found.phases[i - 1].kind < phase.kind);
            RC_ASSERT(found.phases[i - 1].end.at == phase.begin.at);
            RC_ASSERT(found.phases[i - 1].end.rule == phase.begin.rule);
        }
    }
    for (const Pulse& pulse : found.pulses) {
        RC_ASSERT(pulse.heightKPa > pulse.depthKPa);
    }
}

RC_GTEST_PROP(TurningPointProperties, TakeTurnsBySwings, ())
{
    std::vector<double> values;
    const auto samples = drawn<std::size_t>(0, 80);
    for (std::size_t i = 0; i < samples; ++i) {
        values.push_back(drawn(0, 60));
    }
    const auto turns = turningPoints(values, 15);
    for (std::size_t i = 1; i < turns.size(); ++i) {
        RC_ASSERT(turns[i].isTrough != turns[i - 1].isTrough);
        RC_ASSERT(turns[i].sample > turns[i - 1].sample);
        RC_ASSERT(std::abs(values[turns[i].sample] - values[turns[i - 1].sample]) >= 15);
    }
    // No value between a trough and its neighbours is lower.
    for (std::size_t i = 0; i < turns.size(); ++i) {
        const std::size_t from = i > 0 ? turns[i - 1].sample : turns[i].sample;
        const std::size_t to = i + 1 < turns.size() ? turns[i + 1].sample : turns[i].sample;
        for (std::size_t k = from; k <= to; ++k) {
            const double above = values[k] - values[turns[i].sample];
            RC_ASSERT((turns[i].isTrough ? above : -above) >= 0);
        }
    }
}

RC_GTEST_PROP(LeakProperties, IsTheSlopeOfALeakThatIsSteady, ())
{
    const auto samples = drawn<std::size_t>(2, 80);
    const double rate = drawn(0, 500) / 1'000.0; // kPa a minute
    Trace trace;
    trace.seconds = times(samples, 60);
    std::vector<double> kPa;
    for (const double second : trace.seconds) {
        kPa.push_back(5 + rate * second / 60);
    }
    trace.channels = {{"pressure", ChannelRole::chamberPressure, kPa}};
    const LeakTest test = leakTest(trace);
    RC_ASSERT(std::abs(test.byReadings.kPaPerMinute - rate) < 1e-9);
    RC_ASSERT(std::abs(test.byRegression.kPaPerMinute - rate) < 1e-9);
}

RC_GTEST_PROP(IndicatorProperties, ReachesItsEndpointInItsStatedTime, ())
{
    const double cold = drawn(1'150, 1'250) / 10.0;
    const double hot = cold + drawn(80, 150) / 10.0;
    const double z = drawn(60, 140) / 10.0;
    const double minutes = drawn(10, 300) / 10.0;
    const std::vector<StatedValue> stated{{cold, minutes},
                                          {hot, minutes * std::pow(10, (cold - hot) / z)}};
    const auto line = statedLine(stated);
    RC_ASSERT(line.has_value());
    RC_ASSERT(std::abs(line->reference.zKelvin - z) < 1e-9);
    for (const StatedValue& value : stated) {
        const std::vector<double> seconds{0, value.minutes * 60};
        const std::vector<double> celsius{value.celsius, value.celsius};
        RC_ASSERT(std::abs(expectedResponse(*line, seconds, celsius, 1e9).fraction - 1) < 1e-9);
    }
}

RC_GTEST_PROP(EvaluateProperties, AnswersWhateverItIsGiven, ())
{
    Trace trace = wanderingTrace();
    AskedOfTrace asked;
    asked.isSteam = drawn(0, 2) == 1;
    asked.isLeakTest = drawn(0, 10) == 0;
    asked.band = chamberBand();
    asked.band.required =
        *rc::gen::container<std::vector<std::size_t>>(rc::gen::inRange<std::size_t>(0, 5));
    asked.atmosphereKPa = *rc::gen::element(101.325, nan, 0.0);
    asked.leastExposureSeconds = *rc::gen::element(nan, 60.0, 240.0);
    asked.leastDryingSeconds = *rc::gen::element(nan, 60.0, 240.0);
    asked.f0.zKelvin = *rc::gen::element(10.0, 0.0, nan);
    asked.biological = Population{1e6, *rc::gen::element(1.5, 0.0, nan), f0};
    asked.pack = PackDirections{134, 137, 60, 120};
    const int fault = drawn(0, 8);
    if (fault == 0) {
        trace.channels[anySample(trace) % 3].values.pop_back();
    } else if (fault == 1) {
        trace.seconds[anySample(trace)] = *rc::gen::element(nan, -1.0, HUGE_VAL);
    } else if (fault == 2) {
        trace.channels.erase(trace.channels.begin() + drawn(0, 3));
    }
    const TraceEvaluation found = evaluate(trace, asked);
    const bool isUnusable = std::ranges::any_of(found.problems, isFatal);
    RC_ASSERT((found.exposureLeast == Shown::notAsked) == std::isnan(asked.leastExposureSeconds));
    RC_ASSERT((found.dryingLeast == Shown::notAsked) == std::isnan(asked.leastDryingSeconds));
    if (isUnusable || asked.isLeakTest) {
        RC_ASSERT(found.exposureLeast == Shown::open || found.exposureLeast == Shown::notAsked);
        RC_ASSERT(found.cumulative.empty());
        return;
    }
    RC_ASSERT(found.cumulative.size() == trace.samples());
    if (found.exposureLeast == Shown::met) {
        RC_ASSERT(found.exposure.continuous.least >= asked.leastExposureSeconds);
        RC_ASSERT(found.exposure.rule == HoldRule::band);
    }
    if (!std::isnan(found.coldest.whole.minutes)) {
        RC_ASSERT(found.coldest.exposure.minutes <= found.coldest.whole.minutes * (1 + 1e-12));
    }
}

} // namespace
} // namespace loadwarden
