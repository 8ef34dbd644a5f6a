#include "ui/trace/trace_facts_list.h"

#include "core/words/say_trace.h"
#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/trace_facts_germs.h"
#include "ui/trace/trace_facts_parts.h"
#include "ui/trace/trace_scene.h"

#include <QCoreApplication>

#include <algorithm>

namespace loadwarden::ui {
namespace {

struct FactText {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceFacts)
};

TraceFactGroup problemFacts(const TraceEvaluation& evaluation)
{
    TraceFactGroup group{FactText::tr("What cannot be told"), {}};
    for (const TraceProblem problem : evaluation.problems) {
        group.facts.push_back({{}, text(say(problem))});
    }
    return group;
}

TraceFactGroup leakFacts(const TraceEvaluation& evaluation, const AskedOfTrace& asked)
{
    const LeakTest& leak = *evaluation.leak;
    TraceFactGroup group{FactText::tr("Leak test"), {}};
    const auto rate = [](const LeakRate& each) {
        return FactText::tr("%1 mbar/min (%2 mmHg/min)")
            .arg(factNumber(each.mbarPerMinute(), 2), factNumber(each.mmHgPerMinute(), 2));
    };
    group.facts.push_back(
        {FactText::tr("Rate by two readings"), rate(leak.byReadings), evaluation.leakMost,
         FactText::tr("Asked for: at most %1 mbar/min, by the greater of both rates.")
             .arg(factNumber(asked.mostLeakMbarPerMinute, 2))});
    group.facts.push_back(
        {FactText::tr("Rate by regression"), rate(leak.byRegression), evaluation.leakMost});
    group.facts.push_back(
        {FactText::tr("Settling"),
         FactText::tr("from %1 at %2 kPa to %3 at %4 kPa")
             .arg(factTime(leak.evacuatedSeconds), factNumber(leak.evacuatedKPa, 2),
                  factTime(leak.settledSeconds), factNumber(leak.settledKPa, 2)),
         leak.isComplete});
    group.facts.push_back(
        {FactText::tr("Measuring"),
         FactText::tr("until %1 at %2 kPa")
             .arg(factTime(leak.endSeconds), factNumber(leak.endKPa, 2)),
         {},
         leak.isTemperatureDoubtful
             ? FactText::tr(
                   "The chamber's temperature changed by %1 K, or was not measured, so that the "
                   "rate is doubtful: warming feigns a leak, cooling hides one.")
                   .arg(factNumber(leak.temperatureChange, 1))
             : QString()});
    return group;
}

} // namespace

QString factNumber(double value, int decimals)
{
    return text(sayNumber(value, decimals));
}

QString factTime(double seconds)
{
    return text(sayTraceTime(seconds));
}

QString channelName(const Trace& trace, std::size_t place)
{
    if (place >= trace.channels.size()) {
        return {};
    }
    return channelText(trace.channels[place]);
}

std::vector<TraceFactGroup> factsOf(const Trace& trace, const TraceEvaluation& evaluation,
                                    const AskedOfTrace& asked)
{
    std::vector<TraceFactGroup> groups;
    if (!evaluation.problems.empty()) {
        groups.push_back(problemFacts(evaluation));
    }
    if (std::ranges::any_of(evaluation.problems, isFatal)) {
        return groups;
    }
    if (evaluation.leak) {
        groups.push_back(leakFacts(evaluation, asked));
        return groups;
    }
    groups.push_back(exposureFacts(trace, evaluation, asked));
    if (!evaluation.saturation.empty()) {
        groups.push_back(saturationFacts(trace, evaluation, asked));
    }
    if (evaluation.dryingLeast != Shown::notAsked
        || evaluation.phases.find(PhaseKind::drying) != nullptr) {
        groups.push_back(dryingFacts(trace, evaluation, asked));
    }
    groups.push_back(lethalityFacts(trace, evaluation, asked));
    if (evaluation.biological || evaluation.bioburden) {
        groups.push_back(germsOf(evaluation, asked));
    }
    if (!evaluation.phases.phases.empty()) {
        groups.push_back(phaseFacts(trace, evaluation, asked));
    }
    return groups;
}

} // namespace loadwarden::ui
