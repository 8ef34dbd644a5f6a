#include "core/cycle/trace/findings_of.h"

#include "core/cycle/trace/trace_words.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace loadwarden {
namespace {

constexpr std::int64_t mostCounter = 1'000'000'000;
constexpr double mostMs = 1'000'000'000;
constexpr double inMs = 1'000;
constexpr double aRounding = 1e-6; ///< in ms: sums of seconds carry rounding

std::optional<std::int64_t> counterOf(const std::string& text)
{
    std::int64_t counter = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), counter);
    const bool isWhole = error == std::errc() && end == text.data() + text.size();
    return isWhole && counter >= 0 && counter <= mostCounter ? std::optional(counter)
                                                             : std::nullopt;
}

std::optional<Instant> startOf(const TraceStart& start, const Zone& zone)
{
    if (!start.date || !start.secondsOfDay) {
        return std::nullopt;
    }
    constexpr double inMinute = 60;
    const double minute = std::floor(*start.secondsOfDay / inMinute);
    const double second = *start.secondsOfDay - minute * inMinute;
    const Instant at = zone.resolve(*start.date, static_cast<int>(minute))
                       + Duration::milliseconds(std::llround(second * inMs));
    // A day less either way, so that the local time is of these years, too.
    constexpr Duration day = Duration::hours(24);
    return at >= firstMoment + day && at <= lastMoment - day ? std::optional(at) : std::nullopt;
}

std::optional<std::int64_t> msOf(double seconds, double (*round)(double), double rounding)
{
    const double ms = round(seconds * inMs + rounding);
    return ms >= 0 && ms <= mostMs ? std::optional(static_cast<std::int64_t>(ms)) : std::nullopt;
}

std::optional<std::int64_t> leastMs(const Bounds& bounds)
{
    return msOf(
        bounds.least, [](double ms) { return std::floor(ms); }, aRounding);
}

std::optional<std::int64_t> greatestMs(const Bounds& bounds)
{
    return msOf(
        bounds.most, [](double ms) { return std::ceil(ms); }, -aRounding);
}

std::optional<std::int64_t> hundredths(double celsius)
{
    constexpr double inHundredths = 100;
    return std::isfinite(celsius)
               ? std::optional<std::int64_t>(std::llround(celsius * inHundredths))
               : std::nullopt;
}

void takeExtremes(const Trace& trace, const Exposure& exposure, TraceFindings& findings)
{
    if (exposure.rule == HoldRule::none) {
        return;
    }
    double least = unbounded;
    double greatest = -unbounded;
    for (const ChannelFigures& figures : exposure.channels) {
        if (figures.channel < trace.channels.size()
            && isTemperature(trace.channels[figures.channel].role)) {
            least = std::min(least, figures.least); // of NaN the other
            greatest = std::max(greatest, figures.greatest);
        }
    }
    findings.leastCelsiusHundredths = hundredths(least);
    findings.greatestCelsiusHundredths = hundredths(greatest);
}

} // namespace

std::vector<std::string> defectWordsOf(const TraceReading& reading,
                                       const TraceEvaluation& evaluation)
{
    std::vector<std::string> words;
    const auto add = [&words](std::string_view word) {
        if (std::ranges::find(words, word) == words.end()) {
            words.emplace_back(word);
        }
    };
    for (const auto& [text, kind] : traceDefectWords) {
        if (reading.count(kind) > 0) {
            add(text);
        }
    }
    for (const TraceProblem problem : evaluation.problems) {
        add(wordOf(traceProblemWords, problem));
    }
    return words;
}

TraceFindings findingsOf(const TraceReading& reading, const TraceEvaluation& evaluation,
                         const CycleSpecification* specification, const Zone& zone)
{
    TraceFindings findings;
    if (specification != nullptr) {
        findings.specification = specification->id;
        findings.revision = specification->revision;
    }
    findings.counter = counterOf(reading.counter);
    findings.start = startOf(reading.start, zone);
    findings.defects = defectWordsOf(reading, evaluation);
    findings.exposure = evaluation.exposureLeast;
    findings.uninterrupted = evaluation.uninterrupted;
    findings.notBelow = evaluation.notBelow;
    findings.notAbove = evaluation.notAbove;
    findings.saturated = evaluation.saturated;
    findings.drying = evaluation.dryingLeast;
    takeExtremes(reading.trace, evaluation.exposure, findings);
    if (!std::isnan(evaluation.exposure.peakCelsius)) {
        findings.exposureLeastMs = leastMs(evaluation.exposure.continuous);
        findings.exposureMostMs = greatestMs(evaluation.exposure.continuous);
    }
    if (const TracePhase* const drying = evaluation.phases.find(PhaseKind::drying)) {
        findings.dryingLeastMs = leastMs(drying->seconds);
        findings.dryingMostMs = greatestMs(drying->seconds);
    }
    return findings;
}

} // namespace loadwarden
