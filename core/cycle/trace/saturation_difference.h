#pragma once

#include "core/cycle/trace/exposure.h"

namespace loadwarden {

/// Measured temperature minus the saturation temperature of the chamber's absolute pressure
/// (IAPWS-IF97), in kelvin, over the hold. Above 0: the steam is superheated. Below 0: colder than
/// steam alone would be at that pressure, so that air or another non-condensable gas carries part
/// of it. Either may also be a sensor out of calibration, or a wrong atmosphere.
struct SaturationDifference {
    std::size_t channel = 0;
    double mean = notKnown; ///< over time
    /// Without the edges of the hold (TraceSettings::saturationEdgeSeconds), unless nothing is left
    /// then.
    double least = notKnown;
    double greatest = notKnown;
    double leastAtSeconds = notKnown; ///< when first
    double greatestAtSeconds = notKnown;
    std::size_t measured = 0; ///< samples with both temperature and pressure
};

/// The samples of a hold by which the extremes are taken: without its edges, or all of them where
/// nothing would be left. Meaningless without a hold.
[[nodiscard]] SampleRange saturationJudged(const Trace& trace, const Exposure& exposure,
                                           const TraceSettings& settings = {});

/// For each required temperature channel, in that order; none without a hold or a channel of
/// pressure. All NaN where a channel and the pressure have no sample in common.
[[nodiscard]] std::vector<SaturationDifference>
saturationDifferences(const Trace& trace, const Band& band, const Exposure& exposure,
                      const TraceSettings& settings = {});

} // namespace loadwarden
