#pragma once

#include <cstddef>
#include <span>
#include <vector>

namespace loadwarden {

/// Where a series turns between rising and falling by at least `leastSwing` each way.
struct TurningPoint {
    std::size_t sample = 0; ///< the first of the extreme value
    bool isTrough = false;
};

/// The turning points in order, troughs and peaks in turn; NaN is passed over. Where the series
/// begins and ends is no turning point: an extreme counts only once the series has come to it, and
/// gone from it, by the swing.
[[nodiscard]] std::vector<TurningPoint> turningPoints(std::span<const double> values,
                                                      double leastSwing);

} // namespace loadwarden
