#pragma once

#include "core/cycle/trace/settings.h"
#include "core/cycle/trace/trace.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace loadwarden {

/// What every required channel has to keep to during exposure, inclusive.
struct Band {
    double leastCelsius = -unbounded;
    double mostCelsius = unbounded;
    double leastKPa = -unbounded; ///< absolute
    double mostKPa = unbounded;
    std::vector<std::size_t> required; ///< places in Trace::channels; none: nothing is in the band
};

/// How one sample stands to the band, from good to bad: what is known to be wrong outweighs what is
/// not known.
enum class SampleState : std::uint8_t {
    inBand,
    notMeasured, ///< a required channel has no value
    notSteam,    ///< hot enough, but far above the saturation temperature of its pressure
    above,
    below
};

/// Whether the sample is known to be outside the band.
[[nodiscard]] constexpr bool isKnownOutside(SampleState state)
{
    return state > SampleState::notMeasured;
}

/// A value is in the band when it is outside by no more than this: converted values carry rounding.
inline constexpr double bandRounding = 1e-9;

/// The first channel of that role, if any.
[[nodiscard]] std::optional<std::size_t> findChannel(const Trace& trace, ChannelRole role);

/// A value, NaN where the channel is not there or shorter than that.
[[nodiscard]] double valueAt(const Trace& trace, std::size_t channel, std::size_t sample);

/// The state of each sample. `steam`: samples much hotter than the saturation temperature of the
/// chamber pressure are not in the band; without such a channel, or where it has no value, that is
/// not asked. Required channels that are neither temperature nor pressure count as not measured.
[[nodiscard]] std::vector<SampleState> sampleStates(const Trace& trace, const Band& band,
                                                    bool steam, const TraceSettings& settings);

/// What the required temperature channels say together at each sample.
struct RequiredTemperatures {
    std::vector<double> coldest; ///< of all; NaN where one of them is not measured
    std::vector<double> lowest;  ///< of those that are measured; NaN where none is
    std::vector<double> highest; ///< the same
};

[[nodiscard]] RequiredTemperatures requiredTemperatures(const Trace& trace, const Band& band);

} // namespace loadwarden
