// What F0 costs: figures of one run on one machine, nothing is judged here. The aims, on a
// processor with AVX2, over 10,000 traces of 3,600 samples in memory on one thread: at most 0.35 of
// the plain scalar loop, and 0.30 of numpy's plain expression (trace_benchmark_numpy.py, which this
// program runs last and says the ratio of); agreement to 1e-12; cost linear from 10^3 to 10^6
// samples.

#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/saturation.h"

#include <benchmark/benchmark.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <random>

namespace loadwarden {
namespace {

constexpr std::size_t traces = 10'000;
constexpr std::size_t samples = 3'600;
constexpr LethalReference f0{121.1, 10};

/// All traces behind each other: 288 MB a column.
struct Cycles {
    std::vector<double> seconds;
    std::vector<double> celsius;
};

/// Steps of 1 s, nearly; a rise, a hold at 134.5 °C and a fall, with noise.
const Cycles& cycles()
{
    static const Cycles made = [] {
        Cycles all;
        all.seconds.reserve(traces * samples);
        all.celsius.reserve(traces * samples);
        std::mt19937_64 random(1);
        std::uniform_real_distribution<double> noise(-0.2, 0.2);
        for (std::size_t trace = 0; trace < traces; ++trace) {
            for (std::size_t i = 0; i < samples; ++i) {
                const auto second = static_cast<double>(i);
                const double rise = std::min(second / 900, 1.0);
                const double fall = std::min((3'600 - second) / 1'800, 1.0);
                all.seconds.push_back(second + noise(random));
                all.celsius.push_back(20 + 114.5 * rise * fall + noise(random));
            }
        }
        return all;
    }();
    return made;
}

/// The plain loop: each rate once.
double plainF0(const double* seconds, const double* celsius, std::size_t count)
{
    const double slope = std::log(10.0) / f0.zKelvin;
    double area = 0;
    double before = std::exp(slope * (celsius[0] - f0.celsius));
    for (std::size_t i = 1; i < count; ++i) {
        const double rate = std::exp(slope * (celsius[i] - f0.celsius));
        area += (before + rate) / 2 * (seconds[i] - seconds[i - 1]);
        before = rate;
    }
    return area / 60;
}

double ourF0(const double* seconds, const double* celsius, std::size_t count)
{
    return lethality({seconds, count}, {celsius, count}, f0).minutes;
}

/// Processor time of this thread: that of others on the machine is no cost of ours.
double processorSeconds()
{
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

/// Seconds of one pass over all traces.
template <class F>
double secondsOfAll(F f)
{
    const double began = processorSeconds();
    double sum = 0;
    for (std::size_t trace = 0; trace < traces; ++trace) {
        sum += f(cycles().seconds.data() + trace * samples,
                 cycles().celsius.data() + trace * samples, samples);
    }
    benchmark::DoNotOptimize(sum);
    return processorSeconds() - began;
}

/// The ratios that are asked for, all of one run.
void f0OfAllTraces(benchmark::State& state)
{
    double worst = 0;
    for (std::size_t trace = 0; trace < traces; ++trace) {
        const double* seconds = cycles().seconds.data() + trace * samples;
        const double* celsius = cycles().celsius.data() + trace * samples;
        const double plain = plainF0(seconds, celsius, samples);
        worst = std::max(worst, std::abs(ourF0(seconds, celsius, samples) / plain - 1));
    }
    // The best of five passes each, in turn.
    double ours = unbounded;
    double plain = unbounded;
    for (auto _ : state) {
        for (int pass = 0; pass < 5; ++pass) {
            plain = std::min(plain, secondsOfAll(plainF0));
            ours = std::min(ours, secondsOfAll(ourF0));
        }
    }
    state.counters["ours_s"] = ours;
    state.counters["plain_s"] = plain;
    state.counters["ours/plain"] = ours / plain;
    state.counters["disagreement"] = worst;
    const std::string command =
        LOADWARDEN_PYTHON " '" LOADWARDEN_SOURCE_DIR "/tests/benchmarks/trace_benchmark_numpy.py'";
    if (FILE* pipe = popen(command.c_str(), "r")) {
        double numpy = 0;
        if (std::fscanf(pipe, "%lf", &numpy) == 1) {
            state.counters["numpy_s"] = numpy;
            state.counters["ours/numpy"] = ours / numpy;
        }
        pclose(pipe);
    }
}
BENCHMARK(f0OfAllTraces)->Iterations(1)->Unit(benchmark::kMillisecond);

/// A steam cycle of so many samples in 16 channels: six temperatures, one pressure, nine unused.
Trace wideTrace(std::size_t count)
{
    Trace trace;
    const double held = saturationPressure(134.8);
    for (std::size_t i = 0; i < count; ++i) {
        trace.seconds.push_back(static_cast<double>(i));
    }
    for (std::size_t channel = 0; channel < 16; ++channel) {
        const bool isPressure = channel == 6;
        const ChannelRole role =
            isPressure ? ChannelRole::chamberPressure : ChannelRole::loadTemperature;
        trace.channels.push_back({"c", channel > 6 ? ChannelRole::notUsed : role, {}});
        for (std::size_t i = 0; i < count; ++i) {
            const double way = static_cast<double>(i) / static_cast<double>(count);
            const double kPa = way < 0.3   ? 90 - 80 * std::cos(way * 60)
                               : way < 0.6 ? held
                                           : std::max(5.0, 101 - 400 * (way - 0.6));
            trace.channels.back().values.push_back(isPressure ? kPa : saturationTemperature(kPa));
        }
    }
    return trace;
}

AskedOfTrace askedOfWide()
{
    AskedOfTrace asked;
    asked.airRemoval = AirRemoval::prevacuum;
    asked.band.leastCelsius = 134;
    asked.band.mostCelsius = 137;
    asked.band.required = {0, 1, 2, 3, 4, 5};
    asked.leastExposureSeconds = 180;
    asked.leastDryingSeconds = 1'200;
    asked.atmosphereKPa = 101.325;
    asked.biological = Population{1e6, 1.5, f0};
    return asked;
}

/// Aim: 86,400 samples × 16 channels within 150 ms, linear from 10^3 to 10^6.
void evaluateTrace(benchmark::State& state)
{
    const Trace trace = wideTrace(static_cast<std::size_t>(state.range(0)));
    const AskedOfTrace asked = askedOfWide();
    for (auto _ : state) {
        benchmark::DoNotOptimize(evaluate(trace, asked));
    }
    state.SetComplexityN(state.range(0));
}
BENCHMARK(evaluateTrace)
    ->Arg(1'000)
    ->Arg(10'000)
    ->Arg(86'400)
    ->Arg(1'000'000)
    ->Unit(benchmark::kMillisecond)
    ->Complexity(benchmark::oN);

} // namespace
} // namespace loadwarden

BENCHMARK_MAIN();
