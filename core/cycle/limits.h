#pragma once

#include "core/cycle/specification.h"
#include "core/quantities/pressure.h"
#include "core/quantities/temperature.h"

#include <optional>
#include <span>

namespace loadwarden {

/// How a reading stands to one side of a limit.
enum class Against : std::uint8_t { within, beyond, needsAtmosphere, noLimit };

struct LimitCheck {
    Against against = Against::noLimit;
    const Quantity* limit = nullptr; ///< the limit that judged; null where there was none
};

/// Judges a reading by a limit's least side: inclusive, by the value of its own unit, else by exact
/// conversion from the first value stated. Gauge against absolute needs the site's atmosphere.
[[nodiscard]] LimitCheck checkLeast(const Limit& limit, const Quantity& reading,
                                    const std::optional<AbsolutePressure>& atmosphere);

/// The same for the most side.
[[nodiscard]] LimitCheck checkMost(const Limit& limit, const Quantity& reading,
                                   const std::optional<AbsolutePressure>& atmosphere);

/// Whether values of one thing, stated in several units, differ by more than rounding: exactly
/// converted, by more than 0.5 K or 1 kPa. Gauge against absolute needs the site's atmosphere and
/// is left alone without it.
[[nodiscard]] bool disagree(std::span<const Quantity> stated,
                            const std::optional<AbsolutePressure>& atmosphere);

/// A temperature quantity (celsius or fahrenheit).
[[nodiscard]] inline Temperature temperatureOf(const Quantity& quantity)
{
    const std::int64_t hundredths = quantity.thousandths / 10;
    return quantity.unit == Unit::fahrenheit ? Temperature::fromFahrenheitHundredths(hundredths)
                                             : Temperature::fromCelsiusHundredths(hundredths);
}

/// The same in units of 1/1800 K.
[[nodiscard]] inline std::int64_t temperatureUnits(const Quantity& quantity)
{
    return temperatureOf(quantity).units();
}

/// A time quantity (minutes or seconds) in milliseconds.
[[nodiscard]] inline std::int64_t milliseconds(const Quantity& time)
{
    return time.unit == Unit::minutes ? time.thousandths * 60 : time.thousandths;
}

/// The limit of a parameter, or null.
[[nodiscard]] const Limit* findLimit(const CycleSpecification& specification, Parameter parameter);

} // namespace loadwarden
