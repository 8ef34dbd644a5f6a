#pragma once

#include <cstddef>
#include <span>

namespace loadwarden {

/// A straight line through samples by least squares.
struct Line {
    double slope = 0;         ///< a second; NaN with fewer than two measured samples
    double standardError = 0; ///< of the slope; NaN with fewer than three
    std::size_t samples = 0;  ///< measured ones
};

/// What is NaN is left out.
[[nodiscard]] Line fitLine(std::span<const double> seconds, std::span<const double> values);

/// The mean over time by the trapezoid rule, over steps that are measured at both ends; with none,
/// the mean of the samples that are measured; NaN without any.
[[nodiscard]] double timeMean(std::span<const double> seconds, std::span<const double> values);

} // namespace loadwarden
