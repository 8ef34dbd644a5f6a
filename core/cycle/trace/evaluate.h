#pragma once

#include "core/cycle/trace/answer.h"
#include "core/cycle/trace/bowie_dick.h"
#include "core/cycle/trace/indicator_response.h"
#include "core/cycle/trace/leak.h"
#include "core/cycle/trace/microbiology.h"
#include "core/cycle/trace/phases.h"
#include "core/cycle/trace/saturation_difference.h"

namespace loadwarden {

/// What specification, policy and the load's indicators ask of a trace; NaN: not asked.
struct AskedOfTrace {
    bool isSteam = true;
    AirRemoval airRemoval = AirRemoval::unknown;
    Band band;
    double leastExposureSeconds = notKnown;
    double mostExposureSeconds = notKnown;
    double leastDryingSeconds = notKnown;
    double atmosphereKPa = notKnown; ///< of the site
    double saturationKelvin = 2;     ///< either way (EN 285 and HTM: memory)
    LethalReference f0;
    std::optional<Population> biological;             ///< the load's biological indicator
    std::optional<Population> bioburden;              ///< of a unit, as assumed
    std::vector<std::vector<StatedValue>> indicators; ///< stated values, a product each
    std::optional<PackDirections> pack;               ///< of a Bowie-Dick cycle
    bool isLeakTest = false;
    double mostLeakMbarPerMinute = 1.3; ///< HTM 2010 and EN 285 practice texts, restated
    TraceSettings settings;
};

/// Why a trace cannot be evaluated, or not wholly.
enum class TraceProblem : std::uint8_t {
    noSamples,
    timesNotRising,  ///< or not finite
    lengthsDiffer,   ///< a channel with more or fewer values than samples
    requiredMissing, ///< none is required, or one that is not there or has no role
    noPressure,      ///< steam without a channel of chamber pressure
    noAtmosphere     ///< not stated: phases beyond exposure cannot be told
};

/// Whether nothing at all can be computed.
[[nodiscard]] constexpr bool isFatal(TraceProblem problem)
{
    return problem <= TraceProblem::lengthsDiffer;
}

/// F over the whole cycle and over the hold alone.
struct CycleLethality {
    Lethality whole;
    Lethality exposure;
};

struct ChannelLethality {
    std::size_t channel = 0;
    CycleLethality f0;
};

/// What the lethality at the coldest required channel does to a population.
struct CycleInactivation {
    CycleLethality f; ///< to the population's own reference
    Inactivation whole;
    Inactivation exposure;
};

/// All that is computed from a trace.
struct TraceEvaluation {
    std::vector<TraceProblem> problems;

    Exposure exposure;
    Phases phases;
    std::vector<SaturationDifference> saturation;

    Shown exposureLeast = Shown::notAsked; ///< by the longest continuous time in the band
    Shown exposureMost = Shown::notAsked;  ///< by the whole hold
    /// The hold is one run in the band; open where only time without samples interrupts it.
    Shown uninterrupted = Shown::notAsked;
    /// No required channel fell below, or rose above, the band during the hold.
    Shown notBelow = Shown::notAsked;
    Shown notAbove = Shown::notAsked;
    Shown dryingLeast = Shown::notAsked;
    /// Every required temperature is within `saturationKelvin` of saturation through the hold.
    Shown saturated = Shown::notAsked;

    std::vector<ChannelLethality> lethality; ///< for each temperature channel
    /// F0 of the coldest required channel at each moment; where one is not measured, nothing is
    /// counted.
    CycleLethality coldest;
    std::vector<double> cumulative; ///< minutes, of the coldest; as many as samples

    std::optional<CycleInactivation> biological;
    std::optional<CycleInactivation> bioburden;
    /// By the coldest required channel; nullopt where the stated values make no line.
    std::vector<std::optional<IndicatorResponse>> indicators;

    std::optional<PackExposure> pack;
    std::optional<LeakTest> leak;
    Shown leakMost = Shown::notAsked; ///< by the worse of both rates; open if incomplete
};

/// Pure and total. With a fatal problem only the problems are said and what is asked is open.
[[nodiscard]] TraceEvaluation evaluate(const Trace& trace, const AskedOfTrace& asked);

} // namespace loadwarden
