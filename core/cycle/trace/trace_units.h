#pragma once

#include "core/cycle/trace/trace_mapping.h"

namespace loadwarden {

/// kPa in one of a recorder's pressure units; 0 for a temperature's. Pound-force per square inch,
/// conventional inch and millimetre of mercury by NIST Special Publication 811 (2008), appendix
/// B.8.
[[nodiscard]] constexpr double kPaIn(RecorderUnit unit)
{
    switch (unit) {
    case RecorderUnit::celsius:
    case RecorderUnit::fahrenheit:
    case RecorderUnit::kelvin: return 0;
    case RecorderUnit::kPa: return 1;
    case RecorderUnit::bar: return 100;
    case RecorderUnit::mbar: return 0.1;
    case RecorderUnit::psi: return 6.894757;
    case RecorderUnit::inHg: return 3.386389;
    case RecorderUnit::mmHg: return 0.1333224;
    }
    return 0;
}

/// A recorder's value in degrees Celsius, or in kPa above the same zero.
[[nodiscard]] constexpr double inHouseUnit(double value, RecorderUnit unit)
{
    switch (unit) {
    case RecorderUnit::celsius: return value;
    case RecorderUnit::fahrenheit: return (value - 32) / 1.8;
    case RecorderUnit::kelvin: return value - 273.15;
    // A product with 0.1 would round twice.
    case RecorderUnit::mbar: return value / 10;
    default: return value * kPaIn(unit);
    }
}

} // namespace loadwarden
