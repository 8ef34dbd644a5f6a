#include "core/cycle/trace/saturation_difference.h"

#include "core/cycle/trace/saturation.h"
#include "core/cycle/trace/series.h"

#include <cmath>
#include <span>

namespace loadwarden {
namespace {

/// The samples of the hold without its edges; all of them where nothing would be left.
SampleRange judgedOf(std::span<const double> seconds, const SampleRange& hold, double edge)
{
    SampleRange judged = hold;
    while (judged.first <= hold.last && seconds[judged.first] < seconds[hold.first] + edge) {
        ++judged.first;
    }
    while (judged.last > judged.first && seconds[judged.last] > seconds[hold.last] - edge) {
        --judged.last;
    }
    return judged.first > judged.last || seconds[judged.last] > seconds[hold.last] - edge ? hold
                                                                                          : judged;
}

SaturationDifference differenceOf(const Trace& trace, std::size_t channel,
                                  std::span<const double> boils, const SampleRange& hold,
                                  const SampleRange& judged)
{
    SaturationDifference result;
    result.channel = channel;
    std::vector<double> differences;
    differences.reserve(boils.size());
    for (std::size_t i = 0; i < boils.size(); ++i) {
        const double difference = valueAt(trace, channel, hold.first + i) - boils[i];
        differences.push_back(difference);
        if (std::isnan(difference)) {
            continue;
        }
        ++result.measured;
        if (hold.first + i < judged.first || hold.first + i > judged.last) {
            continue;
        }
        if (!(difference >= result.least)) {
            result.least = difference;
            result.leastAtSeconds = trace.seconds[hold.first + i];
        }
        if (!(difference <= result.greatest)) {
            result.greatest = difference;
            result.greatestAtSeconds = trace.seconds[hold.first + i];
        }
    }
    result.mean =
        timeMean(std::span(trace.seconds).subspan(hold.first, differences.size()), differences);
    return result;
}

} // namespace

SampleRange saturationJudged(const Trace& trace, const Exposure& exposure,
                             const TraceSettings& settings)
{
    return judgedOf(trace.seconds, exposure.hold, settings.saturationEdgeSeconds);
}

std::vector<SaturationDifference> saturationDifferences(const Trace& trace, const Band& band,
                                                        const Exposure& exposure,
                                                        const TraceSettings& settings)
{
    std::vector<SaturationDifference> results;
    const auto pressure = findChannel(trace, ChannelRole::chamberPressure);
    if (exposure.rule == HoldRule::none || !pressure) {
        return results;
    }
    std::vector<double> boils;
    for (std::size_t i = exposure.hold.first; i <= exposure.hold.last; ++i) {
        boils.push_back(saturationTemperature(valueAt(trace, *pressure, i)));
    }
    const SampleRange judged = saturationJudged(trace, exposure, settings);
    for (const std::size_t channel : band.required) {
        if (channel < trace.channels.size() && isTemperature(trace.channels[channel].role)) {
            results.push_back(differenceOf(trace, channel, boils, exposure.hold, judged));
        }
    }
    return results;
}

} // namespace loadwarden
