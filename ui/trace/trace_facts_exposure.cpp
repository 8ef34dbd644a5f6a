#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_facts_parts.h"

#include <QCoreApplication>

#include <cmath>

namespace loadwarden::ui {
namespace {

class ExposureFacts {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceFacts)

public:
    ExposureFacts(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked)
        : t_(trace), e_(evaluation), a_(asked)
    {
    }

    [[nodiscard]] TraceFactGroup exposure() const
    {
        TraceFactGroup group{tr("Exposure"), {}};
        const Exposure& exposure = e_.exposure;
        group.facts.push_back(
            {tr("Continuously in the band"), text(sayBounds(exposure.continuous)), e_.exposureLeast,
             std::isnan(a_.leastExposureSeconds)
                 ? QString()
                 : tr("Asked for: at least %1. Only the shorter time is sure; between two samples "
                      "nobody knows.")
                       .arg(text(sayLength(a_.leastExposureSeconds)))});
        if (exposure.rule == HoldRule::none) {
            group.facts.push_back({tr("Held"),
                                   tr("No time at temperature is found."),
                                   {},
                                   tr("The highest temperature that every required sensor had at "
                                      "one time: %1 °C.")
                                       .arg(factNumber(exposure.peakCelsius, 2))});
            return group;
        }
        const double from = t_.seconds[exposure.hold.first];
        const double to = t_.seconds[exposure.hold.last];
        group.facts.push_back(
            {tr("Held"), tr("%1 to %2").arg(factTime(from), factTime(to)), e_.exposureMost,
             exposure.rule == HoldRule::plateau
                 ? tr("The band is never reached. What is shown is the time near the highest "
                      "temperature.")
             : std::isnan(a_.mostExposureSeconds)
                 ? QString()
                 : tr("Asked for: at most %1.").arg(text(sayLength(a_.mostExposureSeconds)))});
        group.facts.push_back({tr("Without a break"),
                               exposure.interruptions.empty() ? tr("no interruption")
                               : exposure.interruptions.size() == 1
                                   ? tr("one interruption")
                                   : tr("%1 interruptions").arg(exposure.interruptions.size()),
                               e_.uninterrupted});
        for (const Interruption& each : exposure.interruptions) {
            group.facts.push_back(interruption(each));
        }
        addExtremes(group);
        return group;
    }

private:
    [[nodiscard]] TraceFact interruption(const Interruption& each) const
    {
        QString said =
            tr("%1, from %2 to %3 (%4)")
                .arg(text(say(each.cause)), factTime(t_.seconds[each.between.first]),
                     factTime(t_.seconds[each.between.last]), text(sayBounds(each.seconds)));
        if (!std::isnan(each.coldest)) {
            said +=
                tr(", %1 to %2 °C").arg(factNumber(each.coldest, 2), factNumber(each.hottest, 2));
        }
        return {tr("Interruption"), said};
    }

    void addExtremes(TraceFactGroup& group) const
    {
        for (const ChannelFigures& each : e_.exposure.channels) {
            const bool isPressure =
                each.channel < t_.channels.size() && !isTemperature(t_.channels[each.channel].role);
            const QString unit = isPressure ? tr("kPa") : tr("°C");
            group.facts.push_back(
                {channelName(t_, each.channel),
                 tr("least %1, greatest %2, mean %3 %4; drift %5 a minute")
                     .arg(factNumber(each.least, 2), factNumber(each.greatest, 2),
                          factNumber(each.mean, 2), unit, factNumber(each.driftPerMinute, 3))});
        }
        group.facts.push_back({tr("Not below the band"), least(), e_.notBelow});
        group.facts.push_back({tr("Not above the band"), most(), e_.notAbove});
        if (!std::isnan(e_.exposure.greatestSpread)) {
            group.facts.push_back({tr("Between sensors at one time"),
                                   tr("at most %1 K, in the mean %2 K")
                                       .arg(factNumber(e_.exposure.greatestSpread, 2),
                                            factNumber(e_.exposure.meanSpread, 2))});
        }
    }

    [[nodiscard]] QString least() const
    {
        return std::isfinite(a_.band.leastCelsius)
                   ? tr("asked for: at least %1 °C").arg(factNumber(a_.band.leastCelsius, 2))
                   : tr("no least temperature is stated");
    }

    [[nodiscard]] QString most() const
    {
        return std::isfinite(a_.band.mostCelsius)
                   ? tr("asked for: at most %1 °C").arg(factNumber(a_.band.mostCelsius, 2))
                   : tr("no greatest temperature is stated");
    }

    const Trace& t_;
    const TraceEvaluation& e_;
    const AskedOfTrace& a_;
};

} // namespace

TraceFactGroup exposureFacts(const Trace& trace, const TraceEvaluation& evaluation,
                             const AskedOfTrace& asked)
{
    return ExposureFacts(trace, evaluation, asked).exposure();
}

} // namespace loadwarden::ui
