#include "core/cycle/trace/asked_by.h"

#include "core/cycle/limits.h"

#include <algorithm>

namespace loadwarden {
namespace {

double celsiusOf(const Quantity& quantity)
{
    constexpr double unitsInKelvin = 1800;
    const auto above = temperatureOf(quantity) - Temperature::fromCelsiusHundredths(0);
    return static_cast<double>(above.units()) / unitsInKelvin;
}

/// A limit as it judges values of that unit; nullopt: there is none.
std::optional<double> celsiusIn(const std::vector<Quantity>& stated, Unit unit)
{
    const auto own = std::ranges::find(stated, unit, &Quantity::unit);
    if (own != stated.end()) {
        return celsiusOf(*own);
    }
    return stated.empty() ? std::nullopt : std::optional(celsiusOf(stated.front()));
}

double secondsOf(const std::vector<Quantity>& stated)
{
    return stated.empty() ? notKnown : static_cast<double>(milliseconds(stated.front())) / 1000;
}

/// The least that is asked, or to what the program is set.
double leastSeconds(const CycleSpecification& specification, Parameter parameter,
                    const std::optional<std::int64_t>& settingMs)
{
    const Limit* const limit = findLimit(specification, parameter);
    if (limit != nullptr && !limit->least.empty()) {
        return secondsOf(limit->least);
    }
    return settingMs ? static_cast<double>(*settingMs) / 1000 : notKnown;
}

std::vector<Quantity> leastTemperatures(const CycleSpecification& specification)
{
    const Limit* const limit = findLimit(specification, Parameter::temperature);
    if (limit != nullptr && !limit->least.empty()) {
        return limit->least;
    }
    std::vector<Quantity> settings;
    for (const auto& setting :
         {specification.settings.temperature, specification.settings.inFahrenheit}) {
        if (setting) {
            settings.push_back(*setting);
        }
    }
    return settings;
}

Band bandOf(const CycleSpecification& specification, const TraceMapping& mapping)
{
    Band band;
    const std::vector<Quantity> least = leastTemperatures(specification);
    const Limit* const limit = findLimit(specification, Parameter::temperature);
    const std::vector<Quantity> most = limit == nullptr ? std::vector<Quantity>() : limit->most;
    std::size_t used = 0;
    for (const MappedChannel& channel : mapping.channels) {
        if (channel.role == ChannelRole::notUsed) {
            continue;
        }
        if (isTemperature(channel.role)) {
            const Unit unit =
                channel.unit == RecorderUnit::fahrenheit ? Unit::fahrenheit : Unit::celsius;
            band.leastCelsius =
                std::max(band.leastCelsius, celsiusIn(least, unit).value_or(-unbounded));
            band.mostCelsius =
                std::min(band.mostCelsius, celsiusIn(most, unit).value_or(unbounded));
            band.required.push_back(used);
        }
        ++used;
    }
    if (least.empty()) {
        band.required.clear();
    }
    return band;
}

} // namespace

AskedOfTrace askedBy(const CycleSpecification& specification, const TraceMapping& mapping,
                     const std::optional<AbsolutePressure>& atmosphere)
{
    constexpr double micropascalsInKPa = 1e9;
    AskedOfTrace asked;
    asked.isSteam =
        specification.method == Method::steam || specification.method == Method::unknown;
    asked.airRemoval = specification.airRemoval;
    asked.isLeakTest = specification.purpose == Purpose::leak;
    asked.band = bandOf(specification, mapping);
    if (atmosphere) {
        asked.atmosphereKPa = static_cast<double>(atmosphere->micropascals()) / micropascalsInKPa;
    }
    if (asked.isLeakTest) {
        return asked; // it is neither held nor dried
    }
    asked.leastExposureSeconds =
        leastSeconds(specification, Parameter::exposure, specification.settings.exposureMs);
    if (const Limit* const limit = findLimit(specification, Parameter::exposure)) {
        asked.mostExposureSeconds = secondsOf(limit->most);
    }
    asked.leastDryingSeconds =
        leastSeconds(specification, Parameter::drying, specification.settings.dryingMs);
    return asked;
}

} // namespace loadwarden
