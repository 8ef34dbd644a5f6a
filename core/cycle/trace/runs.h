#pragma once

#include "core/cycle/trace/exposure.h"

#include <span>

namespace loadwarden {

/// The runs of samples in the band without a step longer than the longest allowed, in order.
[[nodiscard]] std::vector<SampleRange> runsInBand(std::span<const double> seconds,
                                                  std::span<const SampleState> states,
                                                  double mostStepSeconds);

/// The longest time around a sample in the band in which nothing is known to be outside (see
/// Exposure::continuous). With no sample in the band, the longest between two samples known to be
/// outside; 0 without samples.
[[nodiscard]] double longestPossible(std::span<const double> seconds,
                                     std::span<const SampleState> states);

/// When what holds from `first` to `last` began and ended: next to samples known to be outside.
[[nodiscard]] Moment beginOf(std::span<const double> seconds, std::span<const SampleState> states,
                             std::size_t first);
[[nodiscard]] Moment endOf(std::span<const double> seconds, std::span<const SampleState> states,
                           std::size_t last);

} // namespace loadwarden
