#include "ui/trace/trace_facts_germs.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/power_text.h"

#include <QCoreApplication>

namespace loadwarden::ui {
namespace {

struct Germs {
    Q_DECLARE_TR_FUNCTIONS(loadwarden::ui::TraceFacts)

public:
    static QString population(const Population& each)
    {
        return tr("%1 organisms, D %2 min at %3 °C, z %4 K")
            .arg(powerText(each.count), text(sayNumber(each.dMinutes, 2)),
                 text(sayNumber(each.reference.celsius, 2)),
                 text(sayNumber(each.reference.zKelvin, 2)));
    }

    static void add(TraceFactGroup& group, const QString& what, const QString& chance,
                    const Population& population, const CycleInactivation& found)
    {
        group.facts.push_back({what, Germs::population(population)});
        const auto one = [&](const QString& when, const Inactivation& each) {
            group.facts.push_back(
                {when, tr("log reduction %1, expected survivors %2, %3 %4")
                           .arg(text(sayNumber(each.logReduction, 1)), powerText(each.survivors),
                                chance, chanceText(each.chanceOfAny))});
        };
        one(tr("While held"), found.exposure);
        one(tr("In the whole cycle"), found.whole);
    }
};

} // namespace

QString negativeShows()
{
    return Germs::tr("A negative biological indicator shows that where it lay its own spores were "
                     "killed, so that steam reached that place.");
}

QString negativeDoesNotShow()
{
    return Germs::tr("It does not show that each item is sterile: the six-log kill of its spores "
                     "is not by itself a sterility assurance level of 10⁻⁶. That level also needs "
                     "fewer and less resistant germs on what was cleaned, and the time that "
                     "follows after the last of the indicator's spores.");
}

TraceFactGroup germsOf(const TraceEvaluation& evaluation, const AskedOfTrace& asked)
{
    TraceFactGroup group{Germs::tr("Microbiology, at the coldest required sensor"), {}};
    if (evaluation.biological && asked.biological) {
        Germs::add(group, Germs::tr("Biological indicator"), Germs::tr("chance that it grows"),
                   *asked.biological, *evaluation.biological);
    }
    if (evaluation.bioburden && asked.bioburden) {
        Germs::add(group, Germs::tr("Bioburden of a unit, as assumed"),
                   Germs::tr("probability that a unit is not sterile"), *asked.bioburden,
                   *evaluation.bioburden);
    }
    group.note =
        text(say(Caveat::chamberIsNotPack)) + u' ' + negativeShows() + u' ' + negativeDoesNotShow();
    return group;
}

} // namespace loadwarden::ui
