#include "core/cycle/trace/exposure.h"

#include "core/cycle/trace/runs.h"
#include "core/cycle/trace/saturation.h"
#include "core/cycle/trace/series.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

struct Look {
    const Trace& trace;
    const Band& band;
    const TraceSettings& settings;
    std::vector<SampleState> states;
    RequiredTemperatures temperatures;
};

Interruption interruptionBetween(const Look& look, std::size_t before, std::size_t after)
{
    const std::vector<double>& seconds = look.trace.seconds;
    Interruption found;
    found.between = {before, after};
    found.seconds.most = seconds[after] - seconds[before];
    if (after - before > 1) {
        found.seconds.least = seconds[after - 1] - seconds[before + 1];
    }
    SampleState worst = SampleState::inBand;
    for (std::size_t i = before + 1; i < after; ++i) {
        worst = std::max(worst, look.states[i]);
        found.coldest = std::fmin(found.coldest, look.temperatures.lowest[i]);
        found.hottest = std::fmax(found.hottest, look.temperatures.highest[i]);
    }
    switch (worst) {
    case SampleState::inBand: found.cause = InterruptionCause::gap; break;
    case SampleState::notMeasured: found.cause = InterruptionCause::notMeasured; break;
    case SampleState::notSteam: found.cause = InterruptionCause::notSteam; break;
    case SampleState::above: found.cause = InterruptionCause::above; break;
    case SampleState::below: found.cause = InterruptionCause::below; break;
    }
    return found;
}

double lengthOf(const std::vector<double>& seconds, const SampleRange& range)
{
    return seconds[range.last] - seconds[range.first];
}

/// By how much the temperatures between two runs leave the band; not above 0 where what parts them
/// is something else.
double depthBetween(const Look& look, const SampleRange& before, const SampleRange& after)
{
    double depth = 0;
    for (std::size_t i = before.last + 1; i < after.first; ++i) {
        depth = std::fmax(depth, look.band.leastCelsius - look.temperatures.lowest[i]);
        depth = std::fmax(depth, look.temperatures.highest[i] - look.band.mostCelsius);
    }
    return depth;
}

/// The runs of the exposure: from the first to the last that belongs to it (TraceSettings).
std::span<const SampleRange> runsOfHold(const Look& look, std::span<const SampleRange> runs,
                                        std::size_t longest)
{
    const TraceSettings& settings = look.settings;
    const auto isLong = [&](const SampleRange& run) {
        return lengthOf(look.trace.seconds, run) >= settings.leastHoldSeconds;
    };
    std::size_t first = longest;
    for (std::size_t i = longest; i > 0; --i) {
        const double depth = depthBetween(look, runs[i - 1], runs[i]);
        const bool isDip =
            first == i && depth > settings.noiseKelvin && depth <= settings.shallowKelvin;
        first = isDip || isLong(runs[i - 1]) ? i - 1 : first;
    }
    std::size_t last = longest;
    for (std::size_t i = longest + 1; i < runs.size(); ++i) {
        const bool isDip = depthBetween(look, runs[i - 1], runs[i]) > settings.noiseKelvin;
        last = isDip || isLong(runs[i]) ? i : last;
    }
    return runs.subspan(first, last - first + 1);
}

/// Whether most of the samples are above the band.
bool isAbove(const Look& look, const SampleRange& range)
{
    const auto begin = look.states.begin();
    const auto above =
        std::count(begin + static_cast<std::ptrdiff_t>(range.first),
                   begin + static_cast<std::ptrdiff_t>(range.last) + 1, SampleState::above);
    return 2 * static_cast<std::size_t>(above) > range.last - range.first + 1;
}

void findPlateau(const Look& look, Exposure& exposure)
{
    const std::vector<double>& coldest = look.temperatures.coldest;
    std::size_t top = coldest.size();
    for (std::size_t i = 0; i < coldest.size(); ++i) {
        const bool mayBe =
            look.states[i] == SampleState::below || look.states[i] == SampleState::above;
        if (mayBe && !std::isnan(coldest[i])
            && (top == coldest.size() || coldest[i] > coldest[top])) {
            top = i;
        }
    }
    if (top == coldest.size()
        || !(coldest[top] >= look.band.leastCelsius - look.settings.plateauBelowBandKelvin)
        || std::isinf(look.band.leastCelsius)) {
        return;
    }
    const double bottom = coldest[top] - look.settings.plateauDepthKelvin;
    const std::vector<double>& seconds = look.trace.seconds;
    exposure.rule = HoldRule::plateau;
    exposure.hold = {top, top};
    while (exposure.hold.first > 0 && coldest[exposure.hold.first - 1] >= bottom) {
        --exposure.hold.first;
    }
    while (exposure.hold.last + 1 < coldest.size() && coldest[exposure.hold.last + 1] >= bottom) {
        ++exposure.hold.last;
    }
    const auto [first, last] = exposure.hold;
    exposure.begin = {first > 0 ? seconds[first - 1] : -unbounded, seconds[first]};
    exposure.end = {seconds[last], last + 1 < seconds.size() ? seconds[last + 1] : unbounded};
}

ChannelFigures figuresOf(const Trace& trace, std::size_t channel, const SampleRange& hold)
{
    ChannelFigures figures;
    figures.channel = channel;
    std::vector<double> values;
    values.reserve(hold.last - hold.first + 1);
    for (std::size_t i = hold.first; i <= hold.last; ++i) {
        const double value = valueAt(trace, channel, i);
        figures.least = std::fmin(figures.least, value);
        figures.greatest = std::fmax(figures.greatest, value);
        values.push_back(value);
    }
    const auto seconds = std::span(trace.seconds).subspan(hold.first, values.size());
    figures.mean = timeMean(seconds, values);
    const Line line = fitLine(seconds, values);
    figures.driftPerMinute = line.slope * 60;
    figures.measured = line.samples;
    return figures;
}

void addFigures(const Look& look, Exposure& exposure)
{
    std::size_t temperatures = 0;
    for (const std::size_t channel : look.band.required) {
        exposure.channels.push_back(figuresOf(look.trace, channel, exposure.hold));
        temperatures += channel < look.trace.channels.size()
                        && isTemperature(look.trace.channels[channel].role);
    }
    if (temperatures < 2) {
        return;
    }
    std::vector<double> spreads;
    for (std::size_t i = exposure.hold.first; i <= exposure.hold.last; ++i) {
        spreads.push_back(look.temperatures.highest[i] - look.temperatures.coldest[i]);
        exposure.greatestSpread = std::fmax(exposure.greatestSpread, spreads.back());
    }
    exposure.meanSpread = timeMean(
        std::span(look.trace.seconds).subspan(exposure.hold.first, spreads.size()), spreads);
}

} // namespace

Exposure findExposure(const Trace& trace, const Band& band, bool steam,
                      const TraceSettings& settings)
{
    const Look look{trace, band, settings, sampleStates(trace, band, steam, settings),
                    requiredTemperatures(trace, band)};
    const std::vector<double>& seconds = trace.seconds;
    Exposure exposure;
    for (const double value : look.temperatures.coldest) {
        exposure.peakCelsius = std::fmax(exposure.peakCelsius, value);
    }
    const std::vector<SampleRange> runs =
        runsInBand(seconds, look.states, settings.mostStepSeconds);
    exposure.continuous.most = longestPossible(seconds, look.states);
    const auto longest = std::ranges::max_element(
        runs, {}, [&](const SampleRange& run) { return lengthOf(seconds, run); });
    const double held = runs.empty() ? 0 : lengthOf(seconds, *longest);
    if (!runs.empty()) {
        exposure.longest = *longest;
        exposure.continuous.least = held;
    }
    findPlateau(look, exposure);
    if (exposure.rule != HoldRule::none) {
        // Steam that only passes through the band was held above it.
        const bool isHeldAbove =
            isAbove(look, exposure.hold)
            && lengthOf(seconds, exposure.hold) >= std::max(2 * held, settings.leastHoldSeconds);
        if (runs.empty() || isHeldAbove) {
            addFigures(look, exposure);
            return exposure;
        }
    } else if (runs.empty()) {
        return exposure;
    }
    exposure.rule = HoldRule::band;
    const auto parts = runsOfHold(look, runs, static_cast<std::size_t>(longest - runs.begin()));
    exposure.hold = {parts.front().first, parts.back().last};
    exposure.begin = beginOf(seconds, look.states, exposure.hold.first);
    exposure.end = endOf(seconds, look.states, exposure.hold.last);
    for (std::size_t i = 1; i < parts.size(); ++i) {
        exposure.interruptions.push_back(
            interruptionBetween(look, parts[i - 1].last, parts[i].first));
    }
    addFigures(look, exposure);
    return exposure;
}

} // namespace loadwarden
