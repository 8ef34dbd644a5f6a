#include "core/cycle/trace/evaluate.h"

#include <algorithm>
#include <cmath>

namespace loadwarden {
namespace {

std::vector<TraceProblem> problemsOf(const Trace& trace, const AskedOfTrace& asked)
{
    std::vector<TraceProblem> problems;
    const auto add = [&](bool is, TraceProblem problem) {
        if (is) {
            problems.push_back(problem);
        }
    };
    add(trace.seconds.empty(), TraceProblem::noSamples);
    const auto isWrong = [](double before, double after) { return !(before < after); };
    add(std::ranges::adjacent_find(trace.seconds, isWrong) != trace.seconds.end()
            || !std::ranges::all_of(trace.seconds, [](double at) { return std::isfinite(at); }),
        TraceProblem::timesNotRising);
    add(!std::ranges::all_of(
            trace.channels,
            [&](const TraceChannel& channel) { return channel.values.size() == trace.samples(); }),
        TraceProblem::lengthsDiffer);
    const auto isThere = [&](std::size_t channel) {
        return channel < trace.channels.size()
               && trace.channels[channel].role != ChannelRole::notUsed;
    };
    add(!asked.isLeakTest
            && (asked.band.required.empty() || !std::ranges::all_of(asked.band.required, isThere)),
        TraceProblem::requiredMissing);
    add((asked.isSteam || asked.isLeakTest) && !findChannel(trace, ChannelRole::chamberPressure),
        TraceProblem::noPressure);
    add(asked.isSteam && !asked.isLeakTest && !std::isfinite(asked.atmosphereKPa),
        TraceProblem::noAtmosphere);
    return problems;
}

Shown openIfAsked(double limit)
{
    return std::isnan(limit) ? Shown::notAsked : Shown::open;
}

/// What is asked and not answered yet.
void leaveOpen(const AskedOfTrace& asked, TraceEvaluation& result)
{
    result.exposureLeast = openIfAsked(asked.leastExposureSeconds);
    result.exposureMost = openIfAsked(asked.mostExposureSeconds);
    result.dryingLeast = openIfAsked(asked.leastDryingSeconds);
    if (asked.isLeakTest) {
        result.leakMost = openIfAsked(asked.mostLeakMbarPerMinute);
        return;
    }
    result.uninterrupted = Shown::open;
    result.notBelow = Shown::open;
    result.notAbove = Shown::open;
    result.saturated = asked.isSteam ? openIfAsked(asked.saturationKelvin) : Shown::notAsked;
}

Shown shownUnless(bool isWrong)
{
    return isWrong ? Shown::notMet : Shown::met;
}

void judgeExposure(const AskedOfTrace& asked, TraceEvaluation& result)
{
    const Exposure& exposure = result.exposure;
    if (!std::isnan(exposure.peakCelsius)) {
        result.exposureLeast = showsAtLeast(exposure.continuous, asked.leastExposureSeconds,
                                            asked.settings.timeDoubtSeconds);
    }
    if (exposure.rule == HoldRule::none) {
        return;
    }
    const Bounds whole{exposure.end.earliest - exposure.begin.latest,
                       exposure.end.latest - exposure.begin.earliest};
    result.exposureMost = showsAtMost(whole, asked.mostExposureSeconds);

    const bool isPlateau = exposure.rule == HoldRule::plateau;
    const bool isSeen = std::ranges::any_of(exposure.interruptions, [](const Interruption& each) {
        return each.cause > InterruptionCause::notMeasured;
    });
    if (isPlateau && result.exposureLeast == Shown::open) {
        return; // it may have been in the band unseen
    }
    result.uninterrupted = shownUnless(isSeen || isPlateau);
    if (result.uninterrupted == Shown::met && !exposure.interruptions.empty()) {
        result.uninterrupted = Shown::open;
    }
}

void judgeBand(const Trace& trace, const AskedOfTrace& asked, TraceEvaluation& result)
{
    if (result.exposure.rule == HoldRule::none) {
        return;
    }
    bool isBelow = false;
    bool isAbove = false;
    bool isWhole = true;
    const std::size_t samples = result.exposure.hold.last - result.exposure.hold.first + 1;
    for (const ChannelFigures& figures : result.exposure.channels) {
        const bool isPressure = figures.channel < trace.channels.size()
                                && !isTemperature(trace.channels[figures.channel].role);
        const double least = isPressure ? asked.band.leastKPa : asked.band.leastCelsius;
        const double most = isPressure ? asked.band.mostKPa : asked.band.mostCelsius;
        isBelow = isBelow || figures.least < least - bandRounding;
        isAbove = isAbove || figures.greatest > most + bandRounding;
        isWhole = isWhole && figures.measured == samples;
    }
    const bool mayBeUnseen =
        result.exposure.rule == HoldRule::plateau && result.exposureLeast == Shown::open;
    isWhole = isWhole && !mayBeUnseen;
    isBelow = isBelow && !mayBeUnseen;
    result.notBelow = isBelow ? Shown::notMet : isWhole ? Shown::met : Shown::open;
    result.notAbove = isAbove ? Shown::notMet : isWhole ? Shown::met : Shown::open;
}

void judgeSaturation(const AskedOfTrace& asked, TraceEvaluation& result)
{
    if (result.saturated == Shown::notAsked || result.saturation.empty()) {
        return;
    }
    const double most = asked.saturationKelvin + bandRounding;
    bool isBeyond = false;
    bool isMeasured = true;
    for (const SaturationDifference& difference : result.saturation) {
        isBeyond = isBeyond || difference.least < -most || difference.greatest > most;
        isMeasured = isMeasured && difference.measured > 0;
    }
    result.saturated = isBeyond ? Shown::notMet : isMeasured ? Shown::met : Shown::open;
}

CycleLethality cycleLethality(const Trace& trace, std::span<const double> celsius,
                              const Exposure& exposure, const LethalReference& reference,
                              const TraceSettings& settings)
{
    CycleLethality result;
    result.whole = lethality(trace.seconds, celsius, reference, settings.mostStepSeconds);
    if (exposure.rule != HoldRule::none) {
        const std::size_t first = exposure.hold.first;
        const std::size_t samples = exposure.hold.last - first + 1;
        result.exposure =
            lethality(std::span(trace.seconds).subspan(first, samples),
                      celsius.subspan(first, samples), reference, settings.mostStepSeconds);
    }
    return result;
}

void addLethality(const Trace& trace, const AskedOfTrace& asked, TraceEvaluation& result)
{
    for (std::size_t channel = 0; channel < trace.channels.size(); ++channel) {
        if (isTemperature(trace.channels[channel].role)) {
            result.lethality.push_back(
                {channel, cycleLethality(trace, trace.channels[channel].values, result.exposure,
                                         asked.f0, asked.settings)});
        }
    }
    const std::vector<double> coldest = requiredTemperatures(trace, asked.band).coldest;
    result.coldest = cycleLethality(trace, coldest, result.exposure, asked.f0, asked.settings);
    result.cumulative =
        cumulativeLethality(trace.seconds, coldest, asked.f0, asked.settings.mostStepSeconds);
    const auto inactivated =
        [&](const std::optional<Population>& population) -> std::optional<CycleInactivation> {
        if (!population) {
            return std::nullopt;
        }
        const CycleLethality f =
            cycleLethality(trace, coldest, result.exposure, population->reference, asked.settings);
        return CycleInactivation{f, inactivate(*population, f.whole.minutes),
                                 inactivate(*population, f.exposure.minutes)};
    };
    result.biological = inactivated(asked.biological);
    result.bioburden = inactivated(asked.bioburden);
    for (const std::vector<StatedValue>& stated : asked.indicators) {
        const auto line = statedLine(stated);
        result.indicators.push_back(
            line ? std::optional(
                expectedResponse(*line, trace.seconds, coldest, asked.settings.mostStepSeconds))
                 : std::nullopt);
    }
}

void addLeak(const Trace& trace, const AskedOfTrace& asked, TraceEvaluation& result)
{
    result.leak = leakTest(trace, asked.settings);
    const double worst = LeakRate{result.leak->worstKPaPerMinute()}.mbarPerMinute();
    result.leakMost = showsAtMost({worst, worst}, asked.mostLeakMbarPerMinute);
    if (result.leakMost == Shown::met && result.leak->isComplete != Shown::met) {
        result.leakMost = Shown::open;
    }
}

} // namespace

TraceEvaluation evaluate(const Trace& trace, const AskedOfTrace& asked)
{
    TraceEvaluation result;
    result.problems = problemsOf(trace, asked);
    leaveOpen(asked, result);
    if (std::ranges::any_of(result.problems, isFatal)) {
        return result;
    }
    if (asked.isLeakTest) {
        addLeak(trace, asked, result);
        return result;
    }
    result.exposure = findExposure(trace, asked.band, asked.isSteam, asked.settings);
    judgeExposure(asked, result);
    judgeBand(trace, asked, result);
    if (asked.isSteam) {
        result.phases = findPhases(trace, asked.band, result.exposure, asked.airRemoval,
                                   asked.atmosphereKPa, asked.settings);
        result.saturation =
            saturationDifferences(trace, asked.band, result.exposure, asked.settings);
        if (const TracePhase* drying = result.phases.find(PhaseKind::drying)) {
            result.dryingLeast = showsAtLeast(drying->seconds, asked.leastDryingSeconds,
                                              asked.settings.timeDoubtSeconds);
        }
    }
    judgeSaturation(asked, result);
    addLethality(trace, asked, result);
    if (asked.pack) {
        result.pack = packExposure(trace, asked.band.required, *asked.pack, asked.settings);
    }
    return result;
}

} // namespace loadwarden
