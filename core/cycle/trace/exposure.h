#pragma once

#include "core/cycle/trace/band.h"

#include <optional>

namespace loadwarden {

/// Samples from one to another, both included.
struct SampleRange {
    std::size_t first = 0;
    std::size_t last = 0;

    friend bool operator==(const SampleRange&, const SampleRange&) = default;
};

/// A moment that lies after one sample and not after the next: seconds since the trace began.
/// `earliest` is −infinity for what was so from the first sample on, `latest` infinity for what was
/// so to the last.
struct Moment {
    double earliest = 0;
    double latest = 0;

    friend bool operator==(const Moment&, const Moment&) = default;
};

/// Why the time in the band was interrupted, from good to bad; the worst of what was measured.
enum class InterruptionCause : std::uint8_t {
    gap,         ///< between two samples too far apart
    notMeasured, ///< a required channel without a value
    notSteam,
    above,
    below
};

struct Interruption {
    InterruptionCause cause = InterruptionCause::gap;
    SampleRange between; ///< the last sample in the band before it and the first after it
    /// From the first to the last sample outside, and between the two in the band around them.
    Bounds seconds;
    double coldest = notKnown; ///< of the required channels outside, degrees Celsius
    double hottest = notKnown;
};

/// What one required channel did during the hold, in its unit (degrees Celsius, kPa absolute).
struct ChannelFigures {
    std::size_t channel = 0;
    double least = notKnown;
    double greatest = notKnown;
    double mean = notKnown;           ///< over time
    double driftPerMinute = notKnown; ///< slope of the straight line through it
    std::size_t measured = 0;         ///< samples
};

/// What the hold is: the time in the band, or where there is none the plateau below or above it.
enum class HoldRule : std::uint8_t { none, band, plateau };

/// The time in the band.
struct Exposure {
    HoldRule rule = HoldRule::none;

    /// The longest continuous time with every required channel in the band, in seconds. `least`:
    /// from the first to the last sample of the longest run of samples in the band without a step
    /// over the longest allowed; that much is sure between samples. `most`: the longest time in
    /// which nothing is known to be outside, counting from one sample outside to the next;
    /// infinite where the trace begins or ends so. Without a run in the band `least` is 0 and
    /// `most` what may lie unseen between two samples. A limit is met by `least` alone.
    Bounds continuous;
    SampleRange longest; ///< that run; meaningful with rule band

    /// From the first to the last run that belongs to the exposure, interruptions included; with
    /// rule plateau the time within a few kelvin of the highest temperature.
    SampleRange hold;
    Moment begin;
    Moment end;
    std::vector<Interruption> interruptions;

    std::vector<ChannelFigures> channels; ///< over the hold, in the order required
    double greatestSpread = notKnown; ///< of the required temperatures at one time; NaN with one
    double meanSpread = notKnown;

    /// The highest temperature that all required channels had at one time; NaN without any.
    double peakCelsius = notKnown;
};

/// Finds the exposure. `seconds` must rise; an empty trace, or one without a required temperature,
/// has none.
[[nodiscard]] Exposure findExposure(const Trace& trace, const Band& band, bool steam,
                                    const TraceSettings& settings = {});

} // namespace loadwarden
