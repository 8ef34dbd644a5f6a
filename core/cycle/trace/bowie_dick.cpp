#include "core/cycle/trace/bowie_dick.h"

#include <cmath>

namespace loadwarden {
namespace {

Shown openIfAsked(double limit)
{
    return std::isnan(limit) ? Shown::notAsked : Shown::open;
}

} // namespace

PackExposure packExposure(const Trace& trace, const std::vector<std::size_t>& required,
                          const PackDirections& directions, const TraceSettings& settings)
{
    PackExposure result;
    result.leastTime = openIfAsked(directions.leastSeconds);
    result.mostTime = openIfAsked(directions.mostSeconds);
    result.mostTemperature = openIfAsked(directions.mostCelsius);
    if (std::isnan(directions.leastCelsius)) {
        return result;
    }
    Band band;
    band.leastCelsius = directions.leastCelsius;
    band.required = required;
    const Exposure exposure = findExposure(trace, band, true, settings);
    if (exposure.rule != HoldRule::band) {
        if (!std::isnan(exposure.peakCelsius)) {
            result.leastTime = showsAtLeast(exposure.continuous, directions.leastSeconds);
        }
        return result;
    }
    result.seconds = exposure.continuous;
    const Bounds whole{exposure.end.earliest - exposure.begin.latest,
                       exposure.end.latest - exposure.begin.earliest};
    for (const ChannelFigures& figures : exposure.channels) {
        if (isTemperature(trace.channels[figures.channel].role)) {
            result.coldest = std::fmin(result.coldest, figures.least);
            result.hottest = std::fmax(result.hottest, figures.greatest);
        }
    }
    result.leastTime = showsAtLeast(exposure.continuous, directions.leastSeconds);
    result.mostTime = showsAtMost(whole, directions.mostSeconds);
    result.mostTemperature =
        showsAtMost({result.hottest, result.hottest}, directions.mostCelsius + bandRounding);
    return result;
}

} // namespace loadwarden
