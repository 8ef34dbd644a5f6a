#pragma once

#include <cstddef>

namespace loadwarden {

/// Beyond these, degrees Celsius, a value is no temperature of a sterilizer. With z at least 2 K no
/// lethal rate between them leaves the range of a double.
inline constexpr double leastCountable = -90;
inline constexpr double mostCountable = 500;

[[nodiscard]] inline bool isCountable(double celsius)
{
    return celsius >= leastCountable && celsius <= mostCountable; // no NaN
}

/// The end of the stretch of samples that begins at `first`, which is countable: behind the last
/// one that is joined to it by countable samples and steps that are not too long.
[[nodiscard]] std::size_t stretchEnd(const double* seconds, const double* celsius,
                                     std::size_t first, std::size_t samples,
                                     double mostStepSeconds);

} // namespace loadwarden
