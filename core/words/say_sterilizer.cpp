// The words of the rules "sterilizer", "process-failure" and "scope".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::sterilizerServiceUnknown() const
{
    return {tr("No return of this sterilizer to service was signed before the load started."),
            tr("Have a supervisor look whether such a signature is missing here, and record the "
               "sterilizer's service entries. If it was not in service, reprocess the load in a "
               "sterilizer that is.")};
}

Words Sentences::sterilizerNotInService() const
{
    return {subjectIs("qualification")
                ? tr("When the load started, the sterilizer was in qualification, not in service.")
                : tr("When the load started, the sterilizer was out of service."),
            tr("Run no load in this sterilizer until a supervisor returns it to service. %1")
                .arg(reprocessLoad())};
}

Words Sentences::sterilizerHeld() const
{
    return {subjectIs("held")
                ? tr("When the load started, the sterilizer was on hold.")
                : tr("When the load started, the sterilizer was on hold, because lot %1 had "
                     "failed: a positive biological indicator (BI), Bowie-Dick test or "
                     "qualification.")
                      .arg(subject()),
            tr("Run no load in this sterilizer until a supervisor returns it to service. %1")
                .arg(reprocessLoad())};
}

Words Sentences::sterilizerHoldNotKnown() const
{
    return {
        subjectIs("held")
            ? tr("The sterilizer is on hold from a time before this load started, but the hold "
                 "was recorded only after that.")
            : tr("Lot %1, before this load, had a positive biological indicator (BI), or a failed "
                 "Bowie-Dick test or qualification. That was known only after this load had "
                 "started.")
                  .arg(subject()),
        tr("Keep the load in quarantine. Judge whether the cause of the hold could have touched "
           "this load, and write why.")};
}

Words Sentences::sterilizerTakenOutDuring() const
{
    QString says;
    if (subjectIs("qualification")) {
        says = tr("The sterilizer was put into qualification while this load was running.");
    } else if (subjectIs("held")) {
        says = tr("The sterilizer was put on hold while this load was running.");
    } else {
        says = tr("The sterilizer was taken out of service while this load was running.");
    }
    return {says,
            tr("Find out why, judge whether that could have touched this load, and write why.")};
}

Words Sentences::processFailureOpen() const
{
    return {
        tr("Lot %1, before this load in the same sterilizer, was a process failure, and nothing "
           "recorded shows that its cause left this load alone.")
            .arg(subject()),
        tr("Find the cause of that failure and record it with its reach, or judge whether this "
           "load is affected, and write why.")};
}

Words Sentences::scopeNoHistory() const
{
    return {
        tr("No other cycle of this sterilizer is recorded here. Whether a failure or a positive "
           "biological indicator (BI) before or after this load touches it cannot be seen."),
        tr("Record the sterilizer's other cycles, or look in its log for what came before and "
           "after this load.")};
}

Words Sentences::scopeOtherType() const
{
    return {tr("The biological indicator (BI) of lot %1 in this sterilizer was positive. This load "
               "is not in its scope, because its cycle type is another.")
                .arg(subject()),
            tr("Look whether both cycle types are recorded as they were. The facility's policy "
               "says that only loads of the same type are in scope.")};
}

Words Sentences::scopeInPositive() const
{
    return {
        tr("This load lies in the scope of lot %1, whose biological indicator (BI) was "
           "positive.")
            .arg(subject()),
        tr("Keep the load in quarantine. Judge whether it is affected, and write why. Neither a "
           "negative BI that came later nor the closing of the incident frees this load without "
           "that review.")};
}

} // namespace loadwarden
