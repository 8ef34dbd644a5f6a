#include "core/cycle/trace/pressure_series.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {

std::size_t PressureSeries::upTo(double second) const
{
    return static_cast<std::size_t>(std::ranges::upper_bound(seconds, second) - seconds.begin());
}

Moment PressureSeries::around(std::size_t place) const
{
    return {place > 0 ? seconds[place - 1] : -unbounded,
            place + 1 < size() ? seconds[place + 1] : unbounded};
}

Moment PressureSeries::before(std::size_t place) const
{
    return {place > 0 ? seconds[place - 1] : -unbounded, seconds[place]};
}

double unrecorded(std::span<const double> seconds, double begin, double end, double mostStepSeconds)
{
    double sum = 0;
    for (std::size_t i = 1; i < seconds.size(); ++i) {
        const double overlap = std::min(end, seconds[i]) - std::max(begin, seconds[i - 1]);
        if (seconds[i] - seconds[i - 1] > mostStepSeconds && overlap > 0) {
            sum += overlap;
        }
    }
    return sum;
}

PressureSeries pressureOf(const Trace& trace)
{
    PressureSeries series;
    const auto channel = findChannel(trace, ChannelRole::chamberPressure);
    if (!channel) {
        return series;
    }
    series.seconds.reserve(trace.samples());
    series.kPa.reserve(trace.samples());
    for (std::size_t i = 0; i < trace.samples(); ++i) {
        const double value = valueAt(trace, *channel, i);
        if (!std::isnan(value)) {
            series.seconds.push_back(trace.seconds[i]);
            series.kPa.push_back(value);
        }
    }
    return series;
}

} // namespace loadwarden
