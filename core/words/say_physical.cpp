// The words of the rule "physical".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::physicalSettingsMissing() const
{
    return {tr("The cycle specification does not state what the program is set to: %1.")
                .arg(parameter()),
            tr("Have a supervisor enter the program's settings in the cycle specification, from "
               "the sterilizer and its instructions for use.")};
}

Words Sentences::physicalLimitImplausible() const
{
    QString says =
        tr("The cycle specification asks for a temperature lower than any known cycle of "
           "its method has: %1.");
    if (subjectIs("exposure")) {
        says = tr("The cycle specification asks for a shorter exposure than any known cycle of its "
                  "method has at its temperature: %1.");
    } else if (subjectIs("drying")) {
        says = tr("The cycle specification has a shorter drying than a wrapped load needs: %1.");
    }
    const QString told = f_.limit ? QString::fromStdString(sayQuantity(*f_.limit)) : parameter();
    return {says.arg(told),
            tr("Have a supervisor compare settings, limits and their units in the cycle "
               "specification with the instructions for use, and correct what was typed wrong.")};
}

Words Sentences::physicalLimitsDisagree() const
{
    return {tr("The cycle specification states one value in two units, and they are not the same: "
               "%1.")
                .arg(parameter()),
            tr("Have a supervisor compare both with the instructions for use, and correct the "
               "wrong one.")};
}

Words Sentences::physicalLimitsMissing() const
{
    return {
        tr("The cycle specification states no least limit above 0 that the record must reach: %1.")
            .arg(parameter()),
        tr("Have a supervisor enter the limit in the cycle specification, from the instructions "
           "for use of the sterilizer and of what it sterilizes.")};
}

Words Sentences::physicalLimitMilder() const
{
    Words words;
    words.says =
        f_.limit
            ? tr("The cycle specification asks less of the record than the program is set to: %1, "
                 "least limit %2.")
                  .arg(parameter(), QString::fromStdString(sayQuantity(*f_.limit)))
            : tr("The cycle specification asks less of the record than the program is set to: %1.")
                  .arg(parameter());
    words.next =
        tr("Have a supervisor compare settings and limits in the cycle specification with the "
           "instructions for use of the sterilizer and of what it sterilizes, and correct the "
           "wrong one.");
    return words;
}

Words Sentences::physicalImplausible() const
{
    const QString told = f_.value
                             ? tr("%1, %2", "a parameter, then its reading")
                                   .arg(parameter(), QString::fromStdString(sayQuantity(*f_.value)))
                             : parameter();
    return {tr("A reading lies further above what the program is set to than a sterilizer gets by "
               "itself: %1.")
                .arg(told),
            tr("Read the value and its unit from the printout again, and correct what was typed "
               "wrong. A value in Fahrenheit may have been typed as Celsius.")};
}

Words Sentences::physicalAtmosphereUnknown() const
{
    return {tr("A reading is absolute and its limit is gauge, or the other way round, and the "
               "facility's atmospheric pressure is not recorded: %1.")
                .arg(parameter()),
            tr("Record the facility's atmospheric pressure, or read the pressure in the kind of "
               "unit in which the limit is stated.")};
}

Words Sentences::physicalNotJudged() const
{
    return {
        tr("A reading is recorded for a parameter that has no limit, so that nothing judges it: "
           "%1.")
            .arg(parameter()),
        tr("Look whether the instructions for use state a limit. If they do, have a supervisor "
           "enter it in the cycle specification.")};
}

Words Sentences::physicalBelow() const
{
    const QString told = readAgainst(tr("it was %1 and must be at least %2"));
    return {told.isEmpty()
                ? tr("A reading lies below its least limit: %1.").arg(parameter())
                : tr("A reading lies below its least limit: %1; %2.").arg(parameter(), told),
            tr("Read the value and its unit again, and correct what was typed wrong. If it stands: "
               "%1 Have a lead look for the cause before the sterilizer is used again.")
                .arg(reprocessLoad())};
}

Words Sentences::physicalDryingShort() const
{
    const QString told = readAgainst(tr("it was %1 and must be at least %2"));
    return {
        told.isEmpty()
            ? tr("The load was dried for less than the cycle specification asks.")
            : tr("The load was dried for less than the cycle specification asks: %1.").arg(told),
        tr("Look for moisture on and in the packages, as far as that can be seen without opening "
           "them, judge whether this load is affected, and write why. A wet package is "
           "contaminated and does not go.")};
}

Words Sentences::physicalAbove() const
{
    const QString told = readAgainst(tr("it was %1 and may be at most %2"));
    Words words;
    words.says = told.isEmpty()
                     ? tr("A reading lies above its upper limit: %1.").arg(parameter())
                     : tr("A reading lies above its upper limit: %1; %2.").arg(parameter(), told);
    words.next = is(Outcome::fails)
                     ? tr("Look for damage to devices and packaging. %1").arg(reprocessLoad())
                     : tr("Look in the instructions for use of devices, packaging, indicators and "
                          "sterilizer whether they bear it, judge whether this load is affected, "
                          "and write why.");
    return words;
}

Words Sentences::physicalLost() const
{
    return {tr("A reading that the load needs cannot be obtained: %1.").arg(parameter()),
            reprocessLoad()};
}

Words Sentences::physicalMissing() const
{
    return withEntryCause(
        tr("No reading is recorded for a parameter that has a limit: %1.").arg(parameter()),
        tr("A reading is recorded for a parameter that has a limit, but it does not count: %1.")
            .arg(parameter()),
        tr("Read the value from the sterilizer's printout or display after the end of the cycle, "
           "and record it with its unit under your name. If it cannot be obtained, record it as "
           "lost."));
}

} // namespace loadwarden
