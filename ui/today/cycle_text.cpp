#include "ui/today/cycle_text.h"

#include "core/desk/loads_at_hand.h"
#include "core/words/say.h"
#include "ui/look/text.h"
#include "ui/parts/clock_text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct CycleWords {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::CycleWords)
};

} // namespace

CycleMark markOf(const DayCycle& cycle)
{
    if (cycle.test) {
        return {glyphOf(*cycle.test), toneOf(*cycle.test)};
    }
    if (const auto verdict = isWorseNow(cycle)
                                 ? std::max(cycle.decided, std::optional(Verdict::quarantine))
                             : cycle.signedAs ? cycle.signedAs
                                              : cycle.decided) {
        return {glyphOf(*verdict), toneOf(*verdict)};
    }
    return {Glyph::running, ToneOf::neutral};
}

QString stateText(const DayCycle& cycle)
{
    switch (cycle.phase) {
    case Phase::beingLoaded: return CycleWords::tr("Being loaded");
    case Phase::running: return CycleWords::tr("Running");
    case Phase::imported: return CycleWords::tr("Imported, nothing decided");
    case Phase::awaitingDecision:
    case Phase::disposed:
    case Phase::evidenceChanged: break;
    }
    if (cycle.test) {
        return text(say(*cycle.test));
    }
    const QString verdict =
        text(say(cycle.signedAs ? *cycle.signedAs : cycle.decided.value_or(Verdict::quarantine)));
    if (isWorseNow(cycle) && cycle.decided == cycle.signedAs) {
        return CycleWords::tr("%1, signed; items of it are worse now", "a verdict").arg(verdict);
    }
    if (cycle.behind > 0) {
        return (cycle.signedAs
                    ? CycleWords::tr("%1, signed; stay behind: %2", "a verdict, how many")
                    : CycleWords::tr("%1, not signed; stay behind: %2", "a verdict, how many"))
            .arg(verdict)
            .arg(cycle.behind);
    }
    if (!cycle.signedAs) {
        return CycleWords::tr("%1, not signed", "a verdict").arg(verdict);
    }
    if (isWorseNow(cycle)) {
        return CycleWords::tr("%1 now, signed as %2", "two verdicts")
            .arg(text(say(*cycle.decided)), verdict.toLower());
    }
    return cycle.phase == Phase::evidenceChanged
               ? CycleWords::tr("%1, signed; more recorded since", "a verdict").arg(verdict)
               : CycleWords::tr("%1, signed", "a verdict").arg(verdict);
}

QString purposeText(Purpose purpose)
{
    switch (purpose) {
    case Purpose::routine: return CycleWords::tr("Load");
    case Purpose::immediateUse: return CycleWords::tr("Immediate-use load");
    case Purpose::warmUp: return CycleWords::tr("Warm-up");
    case Purpose::bowieDick: return CycleWords::tr("Bowie-Dick test");
    case Purpose::leak: return CycleWords::tr("Leak test");
    case Purpose::qualification: return CycleWords::tr("Qualification");
    }
    return {};
}

QString cycleText(const DayCycle& cycle, Instant now, const HouseStyle& style)
{
    const QString name = text(cycle.lot.empty() ? cycle.id : cycle.lot);
    const QString what = CycleWords::tr("%1 %2", "what a cycle is, then its number")
                             .arg(purposeText(cycle.purpose), name);
    const QString state = stateText(cycle);
    if (!cycle.start) {
        return CycleWords::tr("%1: %2").arg(what, state);
    }
    return cycle.end ? CycleWords::tr("%1, %2: %3", "what it is, from when to when, its state")
                           .arg(what, spanText(*cycle.start, *cycle.end, now, style), state)
                     : CycleWords::tr("%1, since %2: %3")
                           .arg(what, dayClockText(*cycle.start, now, style), state);
}

} // namespace loadwarden::ui
