// Air removal to drying, and what of it counts.
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_facts_parts.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace loadwarden::ui {
namespace {

class CycleFacts {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceFacts)

public:
    CycleFacts(const Trace& trace, const TraceEvaluation& evaluation, const AskedOfTrace& asked)
        : t_(trace), e_(evaluation), a_(asked)
    {
    }

    [[nodiscard]] TraceFactGroup saturation() const
    {
        TraceFactGroup group{tr("Saturation"), {}};
        for (const SaturationDifference& each : e_.saturation) {
            const QString limits = std::isnan(a_.saturationKelvin)
                                       ? QString()
                                       : tr("Asked for: within %1 K either way. ")
                                             .arg(factNumber(a_.saturationKelvin, 1));
            group.facts.push_back(
                {channelName(t_, each.channel),
                 tr("mean %1 K, least %2 K at %3, greatest %4 K at %5")
                     .arg(factNumber(each.mean, 2), factNumber(each.least, 2),
                          factTime(each.leastAtSeconds), factNumber(each.greatest, 2),
                          factTime(each.greatestAtSeconds)),
                 e_.saturated, limits + meaningOf(each)});
        }
        group.note = tr("Measured temperature minus the temperature at which water boils at the "
                        "chamber's absolute pressure (IAPWS-IF97), without the first and last "
                        "%1 s of what is held.")
                         .arg(factNumber(a_.settings.saturationEdgeSeconds, 0));
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
            group.facts.push_back(
                {text(say(phase.kind)),
                 says,
                 {},
                 tr("Begins when %1; ends when %2.")
                     .arg(text(say(phase.begin.rule)), text(say(phase.end.rule)))});
        }
        return group;
    }

    [[nodiscard]] TraceFactGroup lethality() const
    {
        TraceFactGroup group{tr("Lethality, F0 (reference %1 °C, z %2 K)")
                                 .arg(factNumber(a_.f0.celsius, 2), factNumber(a_.f0.zKelvin, 2)),
                             {}};
        const auto add = [&](const QString& what, const CycleLethality& f0) {
            QString left;
            if (f0.whole.leftOutSeconds > 0) {
                left = tr("%1 without samples or values are left out; they add nothing.")
                           .arg(text(sayLength(f0.whole.leftOutSeconds)));
            }
            group.facts.push_back(
                {what,
                 tr("%1 min while held, %2 min in the whole cycle")
                     .arg(factNumber(f0.exposure.minutes, 1), factNumber(f0.whole.minutes, 1)),
                 {},
                 left});
        };
        add(tr("Coldest required sensor"), e_.coldest);
        for (const ChannelLethality& each : e_.lethality) {
            add(channelName(t_, each.channel), each.f0);
        }
        group.note = text(say(Caveat::chamberIsNotPack));
        return group;
    }

private:
    [[nodiscard]] QString moment(const Moment& when, bool isBegin) const
    {
        const double said = isBegin ? when.latest : when.earliest;
        return factTime(std::isfinite(said) ? said : isBegin ? when.earliest : when.latest);
    }

    [[nodiscard]] QString pulses() const
    {
        double deepest = unbounded;
        double highest = -unbounded;
        for (const Pulse& pulse : e_.phases.pulses) {
            deepest = std::min(deepest, pulse.depthKPa);
            highest = std::max(highest, pulse.heightKPa);
        }
        const QString said = tr("Pulses: %1, down to %2 and up to %3 kPa absolute.")
                                 .arg(e_.phases.pulses.size())
                                 .arg(factNumber(deepest, 1), factNumber(highest, 1));
        return e_.phases.pulsesSure
                   ? said
                   : tr("%1 Samples are far apart, and more may lie between them.").arg(said);
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

TraceFactGroup saturationFacts(const Trace& trace, const TraceEvaluation& evaluation,
                               const AskedOfTrace& asked)
{
    return CycleFacts(trace, evaluation, asked).saturation();
}

TraceFactGroup dryingFacts(const Trace& trace, const TraceEvaluation& evaluation,
                           const AskedOfTrace& asked)
{
    return CycleFacts(trace, evaluation, asked).drying();
}

TraceFactGroup phaseFacts(const Trace& trace, const TraceEvaluation& evaluation,
                          const AskedOfTrace& asked)
{
    return CycleFacts(trace, evaluation, asked).phases();
}

TraceFactGroup lethalityFacts(const Trace& trace, const TraceEvaluation& evaluation,
                              const AskedOfTrace& asked)
{
    return CycleFacts(trace, evaluation, asked).lethality();
}

} // namespace loadwarden::ui
