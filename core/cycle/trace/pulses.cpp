#include "core/cycle/trace/pulses.h"

#include "core/cycle/trace/turning_points.h"

#include <algorithm>

namespace loadwarden {
namespace {

std::size_t highest(const PressureSeries& pressure, std::size_t first, std::size_t last)
{
    const auto begin = pressure.kPa.begin();
    const auto found = std::max_element(begin + static_cast<std::ptrdiff_t>(first),
                                        begin + static_cast<std::ptrdiff_t>(last) + 1);
    return static_cast<std::size_t>(found - begin);
}

} // namespace

std::size_t lastAtMost(const PressureSeries& pressure, std::size_t first, std::size_t last,
                       double kPa)
{
    for (std::size_t i = last; i > first; --i) {
        if (pressure.kPa[i] <= kPa) {
            return i;
        }
    }
    return first;
}

AirRemovalLook findPulses(const PressureSeries& pressure, std::size_t last, AirRemoval airRemoval,
                          double atmosphereKPa, const TraceSettings& settings)
{
    AirRemovalLook look;
    const auto turns =
        turningPoints(std::span(pressure.kPa).first(last + 1), settings.pulseLeastKPa);
    for (std::size_t i = 0; i < turns.size(); ++i) {
        if (!turns[i].isTrough) {
            continue;
        }
        const std::size_t trough = turns[i].sample;
        Pulse pulse;
        pulse.trough = pressure.around(trough);
        pulse.depthKPa = pressure.kPa[trough];
        pulse.belowAtmosphere = pulse.depthKPa < atmosphereKPa;
        const bool peakFirst = airRemoval == AirRemoval::steamFlushPressurePulse
                               || (airRemoval == AirRemoval::unknown && !pulse.belowAtmosphere);
        std::size_t peak = last;
        if (peakFirst) {
            peak = i > 0 ? turns[i - 1].sample : highest(pressure, 0, trough);
        } else if (i + 1 < turns.size()) {
            peak = turns[i + 1].sample;
        }
        pulse.peak = pressure.around(peak);
        pulse.heightKPa = pressure.kPa[peak];
        look.pulses.push_back(pulse);
        look.lastTrough = trough;
    }
    return look;
}

} // namespace loadwarden
