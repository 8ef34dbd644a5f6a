#include "ui/trace/trace_facts_list.h"

#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_facts_germs.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

QString number(double value, int decimals)
{
    return text(sayNumber(value, decimals));
}

QString at(double seconds)
{
    return text(sayTraceTime(seconds));
}

class Facts {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceFacts)

public:
    Facts(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked)
        : t_(trace), e_(evaluation), a_(asked)
    {
    }

    [[nodiscard]] TraceFactGroup problems() const
    {
        TraceFactGroup group{tr("What cannot be told"), {}};
        for (const TraceProblem problem : e_.problems) {
            group.facts.push_back({{}, text(say(problem))});
        }
        return group;
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
            group.facts.push_back({tr("Held"), tr("No time at temperature is found."), {},
                                   tr("The highest temperature that every required sensor had at "
                                      "one time: %1 °C.")
                                       .arg(number(exposure.peakCelsius, 2))});
            return group;
        }
        const double from = t_.seconds[exposure.hold.first];
        const double to = t_.seconds[exposure.hold.last];
        group.facts.push_back(
            {tr("Held"), tr("%1 to %2").arg(at(from), at(to)), e_.exposureMost,
             exposure.rule == HoldRule::plateau
                 ? tr("The band is never reached. What is shown is the time near the highest "
                      "temperature.")
             : std::isnan(a_.mostExposureSeconds)
                 ? QString()
                 : tr("Asked for: at most %1.").arg(text(sayLength(a_.mostExposureSeconds)))});
        group.facts.push_back({tr("Without a break"),
                               exposure.interruptions.empty()
                                   ? tr("no interruption")
                                   : tr("%n interruption(s)", nullptr,
                                        static_cast<int>(exposure.interruptions.size())),
                               e_.uninterrupted});
        for (const Interruption& each : exposure.interruptions) {
            group.facts.push_back(interruption(each));
        }
        addExtremes(group);
        return group;
    }

    [[nodiscard]] TraceFactGroup saturation() const
    {
        TraceFactGroup group{tr("Saturation"), {}};
        for (const SaturationDifference& each : e_.saturation) {
            const QString limits =
                std::isnan(a_.saturationKelvin)
                    ? QString()
                    : tr("Asked for: within %1 K either way. ").arg(number(a_.saturationKelvin, 1));
            group.facts.push_back(
                {channel(each.channel),
                 tr("mean %1 K, least %2 K at %3, greatest %4 K at %5")
                     .arg(number(each.mean, 2), number(each.least, 2), at(each.leastAtSeconds),
                          number(each.greatest, 2), at(each.greatestAtSeconds)),
                 e_.saturated, limits + meaningOf(each)});
        }
        group.note = tr("Measured temperature minus the temperature at which water boils at the "
                        "chamber's absolute pressure (IAPWS-IF97), without the first and last "
                        "%1 s of what is held.")
                         .arg(number(a_.settings.saturationEdgeSeconds, 0));
        return group;
    }

    [[nodiscard]] TraceFactGroup drying() const
    {
        TraceFactGroup group{tr("Drying"), {}};
        const TracePhase* const drying = e_.phases.find(PhaseKind::drying);
        group.facts.push_back(
            {tr("Drying time"),
             drying == nullptr ? tr("cannot be told") : text(sayBounds(drying->seconds)),
             e_.dryingLeast,
             std::isnan(a_.leastDryingSeconds)
                 ? QString()
                 : tr("Asked for: at least %1.").arg(text(sayLength(a_.leastDryingSeconds)))});
        return group;
    }

    [[nodiscard]] TraceFactGroup phases() const
    {
        TraceFactGroup group{tr("Phases"), {}};
        for (const TracePhase& phase : e_.phases.phases) {
            QString says = tr("%1 to %2 (%3)")
                               .arg(moment(phase.begin.at, true), moment(phase.end.at, false),
                                    text(sayBounds(phase.seconds)));
            if (phase.kind == PhaseKind::airRemoval && !e_.phases.pulses.empty()) {
                says += u' ' + pulses();
            }
            group.facts.push_back({text(say(phase.kind)), says, {},
                                   tr("Begins when %1; ends when %2.")
                                       .arg(text(say(phase.begin.rule)), text(say(phase.end.rule)))});
        }
        return group;
    }

    [[nodiscard]] TraceFactGroup lethality() const
    {
        TraceFactGroup group{tr("Lethality, F0 (reference %1 °C, z %2 K)")
                                 .arg(number(a_.f0.celsius, 2), number(a_.f0.zKelvin, 2)),
                             {}};
        const auto add = [&](const QString& what, const CycleLethality& f0) {
            QString left;
            if (f0.whole.leftOutSeconds > 0) {
                left = tr("%1 without samples or values are left out; they add nothing.")
                           .arg(text(sayLength(f0.whole.leftOutSeconds)));
            }
            group.facts.push_back({what,
                                   tr("%1 min while held, %2 min in the whole cycle")
                                       .arg(number(f0.exposure.minutes, 1),
                                            number(f0.whole.minutes, 1)),
                                   {},
                                   left});
        };
        add(tr("Coldest required sensor"), e_.coldest);
        for (const ChannelLethality& each : e_.lethality) {
            add(channel(each.channel), each.f0);
        }
        group.note = text(say(Caveat::chamberIsNotPack));
        return group;
    }

    [[nodiscard]] TraceFactGroup leak() const
    {
        const LeakTest& leak = *e_.leak;
        TraceFactGroup group{tr("Leak test"), {}};
        const auto rate = [](const LeakRate& each) {
            return tr("%1 mbar/min (%2 mmHg/min)")
                .arg(number(each.mbarPerMinute(), 2), number(each.mmHgPerMinute(), 2));
        };
        group.facts.push_back(
            {tr("Rate by two readings"), rate(leak.byReadings), e_.leakMost,
             tr("Asked for: at most %1 mbar/min, by the greater of both rates.")
                 .arg(number(a_.mostLeakMbarPerMinute, 2))});
        group.facts.push_back({tr("Rate by regression"), rate(leak.byRegression), e_.leakMost});
        group.facts.push_back({tr("Settling"),
                               tr("from %1 at %2 kPa to %3 at %4 kPa")
                                   .arg(at(leak.evacuatedSeconds), number(leak.evacuatedKPa, 2),
                                        at(leak.settledSeconds), number(leak.settledKPa, 2)),
                               leak.isComplete});
        group.facts.push_back(
            {tr("Measuring"),
             tr("until %1 at %2 kPa").arg(at(leak.endSeconds), number(leak.endKPa, 2)),
             {},
             leak.isTemperatureDoubtful
                 ? tr("The chamber's temperature changed by %1 K, or was not measured, so that the "
                      "rate is doubtful: warming feigns a leak, cooling hides one.")
                       .arg(number(leak.temperatureChange, 1))
                 : QString()});
        return group;
    }

private:
    [[nodiscard]] QString channel(std::size_t place) const
    {
        if (place >= t_.channels.size()) {
            return {};
        }
        const TraceChannel& channel = t_.channels[place];
        const QString role = text(say(channel.role));
        return channel.name.empty() ? role : tr("%1 (%2)").arg(role, text(channel.name));
    }

    [[nodiscard]] QString moment(const Moment& when, bool isBegin) const
    {
        const double said = isBegin ? when.latest : when.earliest;
        return at(std::isfinite(said) ? said : isBegin ? when.earliest : when.latest);
    }

    [[nodiscard]] QString pulses() const
    {
        double deepest = unbounded;
        double highest = -unbounded;
        for (const Pulse& pulse : e_.phases.pulses) {
            deepest = std::min(deepest, pulse.depthKPa);
            highest = std::max(highest, pulse.heightKPa);
        }
        const QString said = tr("%n pulse(s), down to %1 and up to %2 kPa absolute.", nullptr,
                                static_cast<int>(e_.phases.pulses.size()))
                                 .arg(number(deepest, 1), number(highest, 1));
        return e_.phases.pulsesSure ? said
                                    : tr("%1 Samples are far apart, and more may lie between them.")
                                          .arg(said);
    }

    [[nodiscard]] TraceFact interruption(const Interruption& each) const
    {
        QString said = tr("%1, from %2 to %3 (%4)")
                           .arg(text(say(each.cause)), at(t_.seconds[each.between.first]),
                                at(t_.seconds[each.between.last]), text(sayBounds(each.seconds)));
        if (!std::isnan(each.coldest)) {
            said += tr(", %1 to %2 °C").arg(number(each.coldest, 2), number(each.hottest, 2));
        }
        return {tr("Interruption"), said};
    }

    void addExtremes(TraceFactGroup& group) const
    {
        for (const ChannelFigures& each : e_.exposure.channels) {
            const bool isPressure = each.channel < t_.channels.size()
                                    && !isTemperature(t_.channels[each.channel].role);
            const QString unit = isPressure ? tr("kPa") : tr("°C");
            group.facts.push_back(
                {channel(each.channel),
                 tr("least %1, greatest %2, mean %3 %4; drift %5 a minute")
                     .arg(number(each.least, 2), number(each.greatest, 2), number(each.mean, 2),
                          unit, number(each.driftPerMinute, 3))});
        }
        group.facts.push_back({tr("Not below the band"), least(), e_.notBelow});
        group.facts.push_back({tr("Not above the band"), most(), e_.notAbove});
        if (!std::isnan(e_.exposure.greatestSpread)) {
            group.facts.push_back({tr("Between sensors at one time"),
                                   tr("at most %1 K, in the mean %2 K")
                                       .arg(number(e_.exposure.greatestSpread, 2),
                                            number(e_.exposure.meanSpread, 2))});
        }
    }

    [[nodiscard]] QString least() const
    {
        return std::isfinite(a_.band.leastCelsius)
                   ? tr("asked for: at least %1 °C").arg(number(a_.band.leastCelsius, 2))
                   : tr("no least temperature is stated");
    }
    [[nodiscard]] QString most() const
    {
        return std::isfinite(a_.band.mostCelsius)
                   ? tr("asked for: at most %1 °C").arg(number(a_.band.mostCelsius, 2))
                   : tr("no greatest temperature is stated");
    }

    [[nodiscard]] QString meaningOf(const SaturationDifference& each) const
    {
        const double most = std::isnan(a_.saturationKelvin) ? 2 : a_.saturationKelvin;
        if (each.greatest > most) {
            return tr("Above: the steam is superheated, or a sensor or the stated atmosphere is "
                      "wrong. Superheated steam kills more like dry heat.");
        }
        if (each.least < -most) {
            return tr("Below: colder than steam alone would be at this pressure, so that air or "
                      "another non-condensable gas carries part of it, or a sensor or the stated "
                      "atmosphere is wrong.");
        }
        return {};
    }

    const Trace& t_;
    const TraceEvaluation& e_;
    const AskedOfTrace& a_;
};

} // namespace

std::vector<TraceFactGroup> factsOf(const Trace& trace, const TraceEvaluation& evaluation,
                                    const AskedOfTrace& asked)
{
    const Facts facts(trace, evaluation, asked);
    std::vector<TraceFactGroup> groups;
    if (!evaluation.problems.empty()) {
        groups.push_back(facts.problems());
    }
    if (std::ranges::any_of(evaluation.problems, isFatal)) {
        return groups;
    }
    if (evaluation.leak) {
        groups.push_back(facts.leak());
        return groups;
    }
    groups.push_back(facts.exposure());
    if (!evaluation.saturation.empty()) {
        groups.push_back(facts.saturation());
    }
    if (evaluation.dryingLeast != Shown::notAsked
        || evaluation.phases.find(PhaseKind::drying) != nullptr) {
        groups.push_back(facts.drying());
    }
    groups.push_back(facts.lethality());
    if (evaluation.biological || evaluation.bioburden) {
        groups.push_back(germsOf(evaluation, asked));
    }
    if (!evaluation.phases.phases.empty()) {
        groups.push_back(facts.phases());
    }
    return groups;
}

} // namespace loadwarden::ui
