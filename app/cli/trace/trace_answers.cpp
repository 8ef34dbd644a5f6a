#include "app/cli/streams.h"
#include "app/cli/trace/trace_report.h"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace loadwarden::cli {

namespace {

class Answers {
public:
    explicit Answers(const TraceReport& report)
        : m_report(report), m_asked(report.asked), m_found(report.evaluation)
    {
    }

    std::vector<TraceAnswer> all()
    {
        const Exposure& exposure = m_found.exposure;
        const bool hasHold = exposure.rule != HoldRule::none;
        add("exposure", "exposure at least " + lengthText(m_asked.leastExposureSeconds),
            std::isnan(exposure.peakCelsius) ? "-" : lengthText(exposure.continuous),
            m_found.exposureLeast);
        add("exposureMost", "exposure at most " + lengthText(m_asked.mostExposureSeconds),
            hasHold ? lengthText(Bounds{exposure.end.earliest - exposure.begin.latest,
                                        exposure.end.latest - exposure.begin.earliest})
                    : "-",
            m_found.exposureMost);
        add("uninterrupted", "held without a break",
            !hasHold ? "-" : breaksText(exposure.interruptions.size()), m_found.uninterrupted);
        add("notBelow", "not below " + numberText(m_asked.band.leastCelsius, 2) + " °C",
            "least " + extreme(true), m_found.notBelow);
        add("notAbove",
            std::isfinite(m_asked.band.mostCelsius)
                ? "not above " + numberText(m_asked.band.mostCelsius, 2) + " °C"
                : "not above a greatest (none is stated)",
            "greatest " + extreme(false), m_found.notAbove);
        add("saturated",
            "within " + numberText(m_asked.saturationKelvin, 1) + " K of saturated steam",
            saturation(), m_found.saturated);
        const TracePhase* const drying = m_found.phases.find(PhaseKind::drying);
        add("drying", "drying at least " + lengthText(m_asked.leastDryingSeconds),
            drying == nullptr ? "-" : lengthText(drying->seconds), m_found.dryingLeast);
        if (m_found.leak) {
            const double mbar = LeakRate{m_found.leak->worstKPaPerMinute()}.mbarPerMinute();
            add("leak",
                "pressure rises at most " + numberText(m_asked.mostLeakMbarPerMinute, 2)
                    + " mbar/min",
                numberText(mbar, 2) + " mbar/min", m_found.leakMost);
        }
        return std::move(m_all);
    }

private:
    [[nodiscard]] static std::string breaksText(std::size_t count)
    {
        return count == 0 ? "no break"
                          : std::to_string(count) + (count == 1 ? " break" : " breaks");
    }

    void add(const char* key, std::string asked, std::string found, Shown shown)
    {
        if (shown != Shown::notAsked) {
            m_all.push_back({key, std::move(asked), std::move(found), shown});
        }
    }

    /// The least or greatest required temperature during the hold.
    [[nodiscard]] std::string extreme(bool least) const
    {
        double found = notKnown;
        for (const ChannelFigures& figures : m_found.exposure.channels) {
            if (figures.channel < m_report.reading.trace.channels.size()
                && isTemperature(m_report.reading.trace.channels[figures.channel].role)) {
                found =
                    least ? std::fmin(found, figures.least) : std::fmax(found, figures.greatest);
            }
        }
        return numberText(found, 2) + " °C";
    }

    [[nodiscard]] std::string saturation() const
    {
        double least = notKnown;
        double greatest = notKnown;
        for (const SaturationDifference& each : m_found.saturation) {
            least = std::fmin(least, each.least);
            greatest = std::fmax(greatest, each.greatest);
        }
        if (std::isnan(least)) {
            return "-";
        }
        return numberText(least, 2) + " to " + numberText(greatest, 2) + " K";
    }

    const TraceReport& m_report;
    const AskedOfTrace& m_asked;
    const TraceEvaluation& m_found;
    std::vector<TraceAnswer> m_all;
};

} // namespace

std::string numberText(double value, int decimals)
{
    if (!std::isfinite(value)) {
        return "-";
    }
    char text[64];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    return text;
}

std::string lengthText(double seconds)
{
    if (!std::isfinite(seconds)) {
        return "-";
    }
    // A length that is not quite reached must not look as if it were.
    const auto tenths = static_cast<long long>(std::floor(std::abs(seconds) * 10 + 1e-6));
    const long long whole = tenths / 10;
    char text[64];
    if (whole >= 3600) {
        std::snprintf(text, sizeof text, "%lld:%02lld:%02lld", whole / 3600, whole / 60 % 60,
                      whole % 60);
    } else {
        std::snprintf(text, sizeof text, "%lld:%02lld", whole / 60, whole % 60);
    }
    return (seconds < 0 ? "-" : "") + std::string(text)
           + (tenths % 10 == 0 ? "" : "." + std::to_string(tenths % 10));
}

std::string lengthText(const Bounds& seconds)
{
    if (!std::isfinite(seconds.most)) {
        return lengthText(seconds.least) + " or longer";
    }
    const std::string least = lengthText(seconds.least);
    const std::string most = lengthText(seconds.most);
    return least == most ? least : least + " to " + most;
}

std::vector<TraceAnswer> answersOf(const TraceReport& report)
{
    return Answers(report).all();
}

int exitCodeOf(const TraceReport& report)
{
    if (!isUsable(report.reading) || !report.evaluation.problems.empty()) {
        return exitBad;
    }
    const std::vector<TraceAnswer> answers = answersOf(report);
    const bool all = !answers.empty() && std::ranges::all_of(answers, [](const TraceAnswer& each) {
        return each.shown == Shown::met;
    });
    return all ? exitDone : exitWithheld;
}

} // namespace loadwarden::cli
