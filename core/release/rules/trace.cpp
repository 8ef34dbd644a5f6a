#include "core/cycle/limits.h"
#include "core/release/entry_cause.h"
#include "core/release/rules/rules.h"

#include <algorithm>

namespace loadwarden::rules {
namespace {

bool passes(const Policy& policy, std::string_view defect)
{
    return (policy.passesFreeLine && defect == "free-line")
           || (policy.passesMidnight && defect == "midnight")
           || (policy.passesLastLineOpen && defect == "last-line-open");
}

/// One trace with what several lines ask of it.
struct JudgedTrace {
    JudgedTrace(const View& view, std::size_t index)
        : trace(view.load.traces[index]),
          counts(causeOf(trace.act, view.evidence.load.end, view.now) == Cause::none),
          isOfSpecification(trace.specification == view.specification->id
                            && trace.revision == view.specification->revision)
    {
        const auto& counter = view.load.counter;
        const auto& apart = view.evidence.traceStartsApart[index];
        const bool isNear = apart && *apart <= view.policy.clockTolerance;
        isOfCycle = !(trace.counter && counter && trace.counter != counter) && (!apart || isNear);
        agreesByItself = isOfCycle && ((trace.counter && counter) || isNear);
        isUsable = std::ranges::all_of(trace.defects, [&view](const std::string& defect) {
            return passes(view.policy, defect);
        });
    }

    [[nodiscard]] bool isFit() const
    {
        return counts && isOfCycle && isOfSpecification && isUsable;
    }

    const TraceFindings& trace;
    bool counts;
    bool isOfSpecification;
    bool isOfCycle;
    bool agreesByItself; ///< counter or start say that it is of this cycle
    bool isUsable;
};

std::optional<Quantity> celsius(const std::optional<std::int64_t>& hundredths)
{
    return hundredths ? std::optional(Quantity{Unit::celsius, *hundredths * 10}) : std::nullopt;
}

std::optional<Quantity> seconds(const std::optional<std::int64_t>& ms)
{
    return ms ? std::optional(Quantity{Unit::seconds, *ms}) : std::nullopt;
}

/// Whose it is, and by which specification and of what text it was computed.
void judgeOrigin(const View& view, const JudgedTrace& judged, FindingSink& sink)
{
    const std::string_view id = judged.trace.id;
    if (!judged.isOfCycle) {
        sink.add(Key::traceOtherCycle, Outcome::waits, id);
    }
    if (!judged.isOfSpecification) {
        sink.add(Key::traceOtherSpecification, Outcome::waits, id);
    }
    if (!judged.isUsable || !judged.counts) {
        sink.add(Key::traceUnusable, view.policy.traceAsked ? Outcome::waits : Outcome::note, id);
    }
}

/// What fails, unless the exposure was held long enough besides.
void addBreak(Key key, const JudgedTrace& judged, const std::optional<Quantity>& value,
              FindingSink& sink)
{
    const TraceFindings& trace = judged.trace;
    const bool isHeldBesides = judged.isFit() && trace.exposure == Shown::met;
    Finding& finding = isHeldBesides ? sink.addReview(key, Reviewer::lead, trace.id, trace.act)
                                     : sink.add(key, Outcome::fails, trace.id);
    finding.value = value;
}

void judgeAnswers(const View& view, const JudgedTrace& judged, FindingSink& sink)
{
    const TraceFindings& trace = judged.trace;
    if (trace.exposure == Shown::notMet) {
        sink.add(Key::traceExposureShort, Outcome::fails, trace.id).value =
            seconds(trace.exposureMostMs);
    }
    if (trace.uninterrupted == Shown::notMet) {
        addBreak(Key::traceInterrupted, judged, {}, sink);
    }
    if (trace.notBelow == Shown::notMet) {
        addBreak(Key::traceBelow, judged, celsius(trace.leastCelsiusHundredths), sink);
    }
    if (trace.notAbove == Shown::notMet) {
        Finding& finding =
            view.policy.aboveMaximum == AboveMaximum::fails
                ? sink.add(Key::traceAbove, Outcome::fails, trace.id)
                : sink.addReview(Key::traceAbove, Reviewer::lead, trace.id, trace.act);
        finding.value = celsius(trace.greatestCelsiusHundredths);
    }
    if (trace.saturated == Shown::notMet) {
        sink.addReview(Key::traceNotSaturated, Reviewer::lead, trace.id, trace.act);
    }
    if (trace.drying == Shown::notMet) {
        sink.addReview(Key::traceDryingShort, Reviewer::lead, trace.id, trace.act).value =
            seconds(trace.dryingMostMs);
    }
    const bool isOpen = trace.exposure == Shown::notAsked || trace.exposure == Shown::open
                        || trace.uninterrupted == Shown::open || trace.notBelow == Shown::open
                        || trace.saturated == Shown::open || !judged.agreesByItself;
    if (judged.isFit() && isOpen) {
        if (view.policy.traceAsked) {
            sink.addReview(Key::traceNotShown, Reviewer::lead, trace.id, trace.act);
        } else {
            sink.add(Key::traceNotShown, Outcome::note, trace.id);
        }
    }
}

/// The side of a trace outside of which a typed value lies; nullopt: it lies within, or that side
/// is left out.
std::optional<Quantity> sideBroken(const Policy& policy, const TraceFindings& trace,
                                   const ParameterReading& reading)
{
    const auto broken = [](std::int64_t typed, std::optional<std::int64_t> least,
                           std::optional<std::int64_t> most, std::int64_t tolerance) {
        return least && typed < *least - tolerance ? -1 : most && typed > *most + tolerance ? 1 : 0;
    };
    const auto ofTime = [&](const auto& leastMs, const auto& mostMs) {
        const int side =
            broken(milliseconds(reading.value), leastMs, mostMs, policy.traceDiffers.ms);
        return side == 0 ? std::nullopt : seconds(side < 0 ? leastMs : mostMs);
    };
    switch (reading.parameter) {
    case Parameter::temperature: {
        const auto least = celsius(trace.leastCelsiusHundredths);
        const auto greatest = celsius(trace.greatestCelsiusHundredths);
        const auto units = [](const std::optional<Quantity>& value) {
            return value ? std::optional(temperatureUnits(*value)) : std::nullopt;
        };
        const int side = broken(temperatureUnits(reading.value), units(least), units(greatest),
                                policy.traceDiffersUnits);
        return side == 0 ? std::nullopt : side < 0 ? least : greatest;
    }
    case Parameter::exposure: return ofTime(trace.exposureLeastMs, trace.exposureMostMs);
    case Parameter::drying: return ofTime(trace.dryingLeastMs, trace.dryingMostMs);
    case Parameter::pressure:
    case Parameter::concentration:
    case Parameter::humidity: break;
    }
    return std::nullopt;
}

/// The first reading that lies outside of what a trace of the cycle shows, once a parameter.
/// Whatever else is wrong with it: that a trace is spoilt must not take a difference back.
void compareWithTyped(const View& view, std::span<const JudgedTrace> traces, FindingSink& sink)
{
    for (const Parameter parameter :
         {Parameter::temperature, Parameter::exposure, Parameter::drying}) {
        const auto differs = [&]() -> std::optional<std::pair<Quantity, Quantity>> {
            for (const ParameterReading& reading : view.load.readings) {
                for (const JudgedTrace& each : traces) {
                    if (reading.parameter != parameter || !each.isOfCycle) {
                        continue;
                    }
                    if (const auto side = sideBroken(view.policy, each.trace, reading)) {
                        return std::pair(reading.value, *side);
                    }
                }
            }
            return std::nullopt;
        }();
        if (differs) {
            Finding& finding = sink.add(Key::traceDiffers, Outcome::waits, textOf(parameter));
            finding.value = differs->first;
            finding.limit = differs->second;
        }
    }
}

} // namespace

void trace(const View& view, FindingSink& sink)
{
    if (view.specification == nullptr
        || (view.method != Method::steam && view.method != Method::unknown)) {
        return;
    }
    std::pmr::vector<JudgedTrace> traces(view.memory);
    traces.reserve(view.load.traces.size());
    for (std::size_t i = 0; i < view.load.traces.size(); ++i) {
        traces.emplace_back(view, i);
    }
    if (view.policy.traceAsked && std::ranges::none_of(traces, &JudgedTrace::counts)) {
        sink.add(Key::traceMissing, Outcome::waits);
    }
    for (const JudgedTrace& each : traces) {
        judgeOrigin(view, each, sink);
        judgeAnswers(view, each, sink);
    }
    compareWithTyped(view, traces, sink);
}

} // namespace loadwarden::rules
