#pragma once

namespace loadwarden::simulation {

// The saturation line of steam by the equation of W. Wagner and A. Pruss (IAPWS SR1-86, 1992),
// which is another one than the evaluation of traces uses, so that the two check each other.

/// Pressure in kPa at degrees Celsius; 0.01 to 373.
[[nodiscard]] double saturationKPa(double celsius);

/// Temperature in degrees Celsius at a pressure in kPa; 0.62 to 21,000, else that of the nearest.
[[nodiscard]] double saturationCelsius(double kPa);

} // namespace loadwarden::simulation
