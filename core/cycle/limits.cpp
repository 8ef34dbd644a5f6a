#include "core/cycle/limits.h"

#include <cstdlib>

namespace loadwarden {
namespace {

bool isGauge(Unit unit)
{
    return unit == Unit::kPaGauge || unit == Unit::barGauge || unit == Unit::psiGauge;
}

/// The quantity in the finest unit of its kind; gauge pressures as they are, without atmosphere.
std::int64_t inBaseUnits(const Quantity& quantity)
{
    switch (quantity.unit) {
    case Unit::celsius:
    case Unit::fahrenheit: return temperatureUnits(quantity);
    case Unit::minutes:
    case Unit::seconds: return milliseconds(quantity);
    case Unit::kPaAbsolute:
        return AbsolutePressure::fromKPaThousandths(quantity.thousandths).micropascals();
    case Unit::barAbsolute:
        return AbsolutePressure::fromBarThousandths(quantity.thousandths).micropascals();
    case Unit::kPaGauge:
        return GaugePressure::fromKPaThousandths(quantity.thousandths).micropascals();
    case Unit::barGauge:
        return GaugePressure::fromBarThousandths(quantity.thousandths).micropascals();
    case Unit::psiGauge:
        return GaugePressure::fromPsiThousandths(quantity.thousandths).micropascals();
    case Unit::mgPerL:
    case Unit::percent: return quantity.thousandths;
    }
    return 0;
}

const Quantity* judging(const std::vector<Quantity>& stated, Unit unit)
{
    for (const Quantity& value : stated) {
        if (value.unit == unit) {
            return &value;
        }
    }
    return stated.empty() ? nullptr : &stated.front();
}

/// Negative, zero or positive as the reading is below, at or above the limit; nullopt where the
/// atmosphere is needed and not known.
std::optional<std::int64_t> compare(const Quantity& reading, const Quantity& limit,
                                    const std::optional<AbsolutePressure>& atmosphere)
{
    std::int64_t left = inBaseUnits(reading);
    std::int64_t right = inBaseUnits(limit);
    if (isGauge(reading.unit) != isGauge(limit.unit)) {
        if (!atmosphere) {
            return std::nullopt;
        }
        (isGauge(reading.unit) ? left : right) += atmosphere->micropascals();
    }
    return left - right;
}

LimitCheck check(const std::vector<Quantity>& stated, const Quantity& reading,
                 const std::optional<AbsolutePressure>& atmosphere, int wrongSign)
{
    const Quantity* limit = judging(stated, reading.unit);
    if (limit == nullptr) {
        return {};
    }
    const auto difference = reading.unit == limit->unit
                                ? std::optional(reading.thousandths - limit->thousandths)
                                : compare(reading, *limit, atmosphere);
    if (!difference) {
        return {Against::needsAtmosphere, limit};
    }
    return {*difference * wrongSign > 0 ? Against::beyond : Against::within, limit};
}

} // namespace

bool disagree(std::span<const Quantity> stated, const std::optional<AbsolutePressure>& atmosphere)
{
    constexpr std::int64_t mostMicropascals =
        AbsolutePressure::fromKPaThousandths(1'000).micropascals();
    constexpr std::int64_t mostUnits = TemperatureDifference::fromKelvinHundredths(50).units();
    for (std::size_t i = 0; i < stated.size(); ++i) {
        for (std::size_t k = i + 1; k < stated.size(); ++k) {
            const Unit unit = stated[i].unit;
            const bool temperature = unit == Unit::celsius || unit == Unit::fahrenheit;
            const auto apart = compare(stated[i], stated[k], atmosphere);
            if (apart && std::abs(*apart) > (temperature ? mostUnits : mostMicropascals)) {
                return true;
            }
        }
    }
    return false;
}

LimitCheck checkLeast(const Limit& limit, const Quantity& reading,
                      const std::optional<AbsolutePressure>& atmosphere)
{
    return check(limit.least, reading, atmosphere, -1);
}

LimitCheck checkMost(const Limit& limit, const Quantity& reading,
                     const std::optional<AbsolutePressure>& atmosphere)
{
    return check(limit.most, reading, atmosphere, +1);
}

const Limit* findLimit(const CycleSpecification& specification, Parameter parameter)
{
    for (const Limit& limit : specification.limits) {
        if (limit.parameter == parameter) {
            return &limit;
        }
    }
    return nullptr;
}

} // namespace loadwarden
