#pragma once

namespace loadwarden {

/// Saturation of water and steam by IAPWS R7-97(2012), region 4, from 0 °C to the critical point at
/// 373.946 °C.

/// The pressure in kPa absolute at which water boils at that temperature (equation 30); NaN outside
/// 0 to 373.946 °C.
[[nodiscard]] double saturationPressure(double celsius);

/// The temperature in degrees Celsius at which water boils under that absolute pressure in kPa
/// (equation 31); NaN outside 0.611213 to 22,064 kPa.
[[nodiscard]] double saturationTemperature(double kPa);

} // namespace loadwarden
