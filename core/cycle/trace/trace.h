#pragma once

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden {

/// What a channel of a sterilizer's recorder measures.
enum class ChannelRole : std::uint8_t {
    chamberTemperature,
    drainTemperature,
    loadTemperature,
    chamberPressure,
    notUsed
};

[[nodiscard]] constexpr bool isTemperature(ChannelRole role)
{
    return role == ChannelRole::chamberTemperature || role == ChannelRole::drainTemperature
           || role == ChannelRole::loadTemperature;
}

/// One sensor's values, as many as the trace has samples; NaN where nothing was recorded.
/// Temperatures in degrees Celsius, pressures in kPa absolute.
struct TraceChannel {
    std::string name; ///< as the recorder calls it
    ChannelRole role = ChannelRole::notUsed;
    std::vector<double> values;
};

/// What a recorder wrote down of one cycle, in the units of the house.
struct Trace {
    std::vector<double> seconds; ///< since the first sample, strictly increasing
    std::vector<TraceChannel> channels;

    [[nodiscard]] std::size_t samples() const { return seconds.size(); }
};

} // namespace loadwarden
