#include "core/cycle/trace/band.h"

#include "core/cycle/trace/saturation.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

/// The state of one value against its limits.
SampleState stateOf(double value, double least, double most)
{
    if (std::isnan(value)) {
        return SampleState::notMeasured;
    }
    if (value < least - bandRounding) {
        return SampleState::below;
    }
    return value > most + bandRounding ? SampleState::above : SampleState::inBand;
}

SampleState stateOfChannel(const TraceChannel& channel, double value, const Band& band)
{
    if (isTemperature(channel.role)) {
        return stateOf(value, band.leastCelsius, band.mostCelsius);
    }
    if (channel.role == ChannelRole::chamberPressure) {
        return stateOf(value, band.leastKPa, band.mostKPa);
    }
    return SampleState::notMeasured;
}

} // namespace

std::optional<std::size_t> findChannel(const Trace& trace, ChannelRole role)
{
    const auto found = std::ranges::find(trace.channels, role, &TraceChannel::role);
    if (found == trace.channels.end()) {
        return std::nullopt;
    }
    return static_cast<std::size_t>(found - trace.channels.begin());
}

double valueAt(const Trace& trace, std::size_t channel, std::size_t sample)
{
    if (channel >= trace.channels.size() || sample >= trace.channels[channel].values.size()) {
        return notKnown;
    }
    const double value = trace.channels[channel].values[sample];
    return std::isfinite(value) ? value : notKnown;
}

RequiredTemperatures requiredTemperatures(const Trace& trace, const Band& band)
{
    RequiredTemperatures result;
    result.lowest.assign(trace.samples(), notKnown);
    result.highest.assign(trace.samples(), notKnown);
    std::vector<bool> isLost(trace.samples(), false);
    for (const std::size_t channel : band.required) {
        if (channel >= trace.channels.size() || !isTemperature(trace.channels[channel].role)) {
            continue;
        }
        for (std::size_t i = 0; i < trace.samples(); ++i) {
            const double value = valueAt(trace, channel, i);
            isLost[i] = isLost[i] || std::isnan(value);
            result.lowest[i] = std::fmin(result.lowest[i], value);
            result.highest[i] = std::fmax(result.highest[i], value);
        }
    }
    result.coldest = result.lowest;
    for (std::size_t i = 0; i < trace.samples(); ++i) {
        if (isLost[i]) {
            result.coldest[i] = notKnown;
        }
    }
    return result;
}

std::vector<SampleState> sampleStates(const Trace& trace, const Band& band, bool steam,
                                      const TraceSettings& settings)
{
    const std::size_t samples = trace.samples();
    std::vector<SampleState> states(samples, band.required.empty() ? SampleState::notMeasured
                                                                   : SampleState::inBand);
    for (const std::size_t channel : band.required) {
        for (std::size_t i = 0; i < samples; ++i) {
            const SampleState state =
                channel < trace.channels.size()
                    ? stateOfChannel(trace.channels[channel], valueAt(trace, channel, i), band)
                    : SampleState::notMeasured;
            states[i] = std::max(states[i], state);
        }
    }
    const auto pressure = findChannel(trace, ChannelRole::chamberPressure);
    if (!steam || !pressure) {
        return states;
    }
    const std::vector<double> highest = requiredTemperatures(trace, band).highest;
    for (std::size_t i = 0; i < samples; ++i) {
        if (states[i] != SampleState::inBand && states[i] != SampleState::above) {
            continue;
        }
        const double kPa = valueAt(trace, *pressure, i);
        // Below the triple point's pressure there is no steam to be saturated.
        const double boils = saturationTemperature(std::max(kPa, 0.7));
        if (highest[i] - boils > settings.leavesSteamKelvin) {
            states[i] = SampleState::notSteam;
        }
    }
    return states;
}

} // namespace loadwarden
