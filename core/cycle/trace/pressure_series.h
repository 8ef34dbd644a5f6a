#pragma once

#include "core/cycle/trace/exposure.h"

#include <span>
#include <vector>

namespace loadwarden {

/// The chamber pressure where it was measured.
struct PressureSeries {
    std::vector<double> seconds;
    std::vector<double> kPa;

    [[nodiscard]] std::size_t size() const { return kPa.size(); }

    /// How many of the samples are not after a moment.
    [[nodiscard]] std::size_t upTo(double second) const;

    /// Between the samples around a place; open where there is none.
    [[nodiscard]] Moment around(std::size_t place) const;

    /// Between the sample before a place and it.
    [[nodiscard]] Moment before(std::size_t place) const;
};

/// Time within [begin, end] that lies in steps longer than this.
[[nodiscard]] double unrecorded(std::span<const double> seconds, double begin, double end,
                                double mostStepSeconds);

/// Empty where the trace has no channel of chamber pressure.
[[nodiscard]] PressureSeries pressureOf(const Trace& trace);

} // namespace loadwarden
