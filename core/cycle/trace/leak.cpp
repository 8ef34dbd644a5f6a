#include "core/cycle/trace/leak.h"

#include "core/cycle/trace/pressure_series.h"
#include "core/cycle/trace/series.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

constexpr double secondsInMinute = 60;
constexpr double zeroCelsius = 273.15;

/// The last place behind `from` before air is let in: before a rise too fast and too great for
/// noise.
std::size_t lastSealed(const PressureSeries& pressure, std::size_t from,
                       const TraceSettings& settings)
{
    const double fast = settings.leakAirAdmissionKPaPerMinute / secondsInMinute;
    const double window = settings.flatKPa / fast;
    std::size_t back = from; // the last place at least the window earlier, else the one before
    for (std::size_t i = from + 1; i < pressure.size(); ++i) {
        while (back + 1 < i && pressure.seconds[i] - pressure.seconds[back + 1] >= window) {
            ++back;
        }
        const double time = pressure.seconds[i] - pressure.seconds[back];
        if (pressure.kPa[i] - pressure.kPa[back] <= fast * std::max(time, window)) {
            continue;
        }
        // Until it began the pressure fell behind a rise that fast, from then on it ran ahead.
        std::size_t sealed = back;
        const auto ahead = [&](std::size_t k) {
            return pressure.kPa[k] - fast * pressure.seconds[k];
        };
        for (std::size_t k = back; k < i; ++k) {
            sealed = ahead(k) <= ahead(sealed) ? k : sealed;
        }
        return sealed;
    }
    return pressure.size() - 1;
}

double firstTemperature(const Trace& trace, double second)
{
    for (const TraceChannel& channel : trace.channels) {
        if (!isTemperature(channel.role)) {
            continue;
        }
        const auto place = static_cast<std::size_t>(std::ranges::lower_bound(trace.seconds, second)
                                                    - trace.seconds.begin());
        return place < channel.values.size() ? channel.values[place] : notKnown;
    }
    return notKnown;
}

} // namespace

LeakRate leakRate(double fromKPa, double toKPa, double minutes)
{
    return {minutes > 0 ? (toKPa - fromKPa) / minutes : notKnown};
}

double LeakTest::worstKPaPerMinute() const
{
    const double two = byReadings.kPaPerMinute;
    const double line = byRegression.kPaPerMinute;
    return std::isnan(two) || std::isnan(line) ? notKnown : std::max(two, line);
}

LeakTest leakTest(const Trace& trace, const TraceSettings& settings)
{
    LeakTest test;
    const PressureSeries pressure = pressureOf(trace);
    if (pressure.size() < 2) {
        return test;
    }
    const double deepest = *std::ranges::min_element(pressure.kPa);
    const auto evacuated = static_cast<std::size_t>(
        std::ranges::find_if(pressure.kPa,
                             [&](double kPa) { return kPa <= deepest + settings.leakEvacuatedKPa; })
        - pressure.kPa.begin());
    const std::size_t end = lastSealed(pressure, evacuated, settings);
    test.evacuatedSeconds = pressure.seconds[evacuated];
    test.evacuatedKPa = pressure.kPa[evacuated];
    test.endSeconds = pressure.seconds[end];
    test.endKPa = pressure.kPa[end];

    // The last sample that leaves at least the time of measuring behind it.
    std::size_t settled = evacuated;
    while (settled + 1 < end
           && pressure.seconds[settled + 1] <= test.endSeconds - settings.leakMeasureSeconds) {
        ++settled;
    }
    test.settledSeconds = pressure.seconds[settled];
    test.settledKPa = pressure.kPa[settled];
    test.settlingKPa = test.settledKPa - test.evacuatedKPa;
    test.isComplete =
        showsAtLeast({test.endSeconds - test.evacuatedSeconds,
                      pressure.around(end).latest - pressure.around(evacuated).earliest},
                     settings.leakSettleSeconds + settings.leakMeasureSeconds);

    test.byReadings = leakRate(test.settledKPa, test.endKPa,
                               (test.endSeconds - test.settledSeconds) / secondsInMinute);
    const std::size_t samples = end - settled + 1;
    const Line line = fitLine(std::span(pressure.seconds).subspan(settled, samples),
                              std::span(pressure.kPa).subspan(settled, samples));
    test.byRegression = {line.slope * secondsInMinute};
    test.standardError = line.standardError * secondsInMinute;

    const double from = firstTemperature(trace, test.settledSeconds);
    const double to = firstTemperature(trace, test.endSeconds);
    test.temperatureChange = to - from;
    test.explainedKPa = test.settledKPa * test.temperatureChange / (from + zeroCelsius);
    test.isTemperatureDoubtful =
        !(std::abs(test.temperatureChange) <= settings.leakTemperatureKelvin);
    return test;
}

} // namespace loadwarden
