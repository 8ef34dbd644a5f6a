// The words of the rule "trace".
#include "core/words/sentences.h"

namespace loadwarden {

QString Sentences::traceWith(const QString& withValue) const
{
    return f_.value
               ? QStringLiteral(" ") + withValue.arg(QString::fromStdString(sayQuantity(*f_.value)))
               : QString();
}

Words Sentences::traceMissing() const
{
    return {tr("This facility's policy asks for the trace of a steam cycle, and none counts for "
               "this load."),
            tr("After the end of the cycle, take the recorder's file of this cycle and attach it "
               "to the load under your name.")};
}

Words Sentences::traceOtherCycle() const
{
    return {tr("Trace %1 is not of this cycle: its cycle counter is another, or it begins at "
               "another time.")
                .arg(subject()),
            tr("Attach the recorder's file of this cycle. If this is it, correct the counter or "
               "the start that was typed wrong, or how far the sterilizer's clock was off. If it "
               "is of another cycle, void it here and attach it there.")};
}

Words Sentences::traceOtherSpecification() const
{
    return {tr("Trace %1 was evaluated by another cycle specification, or another revision of it, "
               "than this load has.")
                .arg(subject()),
            tr("Evaluate the recorder's file once more by the load's specification and attach "
               "that. Correct the load's specification if it is the wrong one.")};
}

Words Sentences::traceUnusable() const
{
    const QString says =
        tr("Trace %1 cannot be used: its recorder's text has defects, or it was not read after the "
           "end of the cycle by somebody who signed.")
            .arg(subject());
    if (is(Outcome::note)) {
        return {tr("%1 What it shows does not help this load.").arg(says), {}};
    }
    return {says,
            tr("Look at the defects, each with its line and column. Take the file from the "
               "recorder once more, after the cycle, or check how it is mapped, and attach it "
               "again.")};
}

Words Sentences::traceExposureShort() const
{
    return {tr("Trace %1 shows that the exposure was shorter than the cycle specification asks, "
               "held without a break.%2")
                .arg(subject(), traceWith(tr("It was at most %1."))),
            tr("%1 Have a lead look for the cause before the sterilizer is used again.")
                .arg(reprocessLoad())};
}

Words Sentences::traceInterrupted() const
{
    return traceBreak(tr("Trace %1 shows that the exposure was interrupted.").arg(subject()));
}

Words Sentences::traceBelow() const
{
    return traceBreak(
        tr("Trace %1 shows a temperature below the band of the cycle specification while it was "
           "held.%2")
            .arg(subject(), traceWith(tr("It fell to %1."))));
}

Words Sentences::traceBreak(const QString& says) const
{
    if (is(Outcome::fails)) {
        return {says, tr("%1 Have a lead look for the cause before the sterilizer is used again.")
                          .arg(reprocessLoad())};
    }
    return {tr("%1 Besides that it was held long enough.").arg(says),
            tr("Look at the trace for what happened and why, judge whether this load is affected, "
               "and write why.")};
}

Words Sentences::traceAbove() const
{
    return {tr("Trace %1 shows a temperature above the band of the cycle specification while it "
               "was held.%2")
                .arg(subject(), traceWith(tr("It rose to %1."))),
            is(Outcome::fails)
                ? tr("Look for damage to devices and packaging. %1").arg(reprocessLoad())
                : tr("Look in the instructions for use of devices, packaging, indicators and "
                     "sterilizer whether they bear it, judge whether this load is affected, and "
                     "write why.")};
}

Words Sentences::traceNotSaturated() const
{
    return {
        tr("Trace %1 shows a temperature that is not that of saturated steam at the pressure "
           "beside it. Above it lies superheat; below it the pressure is partly of air or another "
           "gas, or a sensor is wrong.")
            .arg(subject()),
        tr("Compare temperature and pressure in the trace, and sensors and atmospheric pressure "
           "with their calibration. Judge whether this load is affected, and write why.")};
}

Words Sentences::traceDryingShort() const
{
    return {tr("Trace %1 shows that the load was dried for less than the cycle specification "
               "asks.%2")
                .arg(subject(), traceWith(tr("It was at most %1."))),
            tr("Look for moisture on and in the packages, as far as that can be seen without "
               "opening them, judge whether this load is affected, and write why. A wet package is "
               "contaminated and does not go.")};
}

Words Sentences::traceNotShown() const
{
    const QString says =
        tr("Trace %1 does not show that this cycle's exposure was as the cycle specification asks: "
           "its samples are too few or too far apart, or nothing in it says of which cycle it is.")
            .arg(subject());
    if (is(Outcome::note) && !f_.reviewed) {
        return {tr("%1 The printout and its readings must show it.").arg(says), {}};
    }
    return {says,
            tr("Look at the trace and at the printout, judge whether they show together what the "
               "load needs, and write why. Have the recorder write its cycle counter and times, "
               "and more often: one sample a second is better than one a minute.")};
}

Words Sentences::traceDiffers() const
{
    const QString told = readAgainst(tr("typed was %1, and the trace shows %2"));
    return {told.isEmpty()
                ? tr("What was typed is not what the trace shows: %1.").arg(parameter())
                : tr("What was typed is not what the trace shows: %1; %2.").arg(parameter(), told),
            tr("Read the printout again and correct what was typed wrong. If printout and trace "
               "really differ, have a lead look for the cause: one of the two is not of this "
               "cycle, or a sensor is wrong.")};
}

} // namespace loadwarden
