// The words of the rules "order", "acts" and "record".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::orderDisagrees() const
{
    return {tr("Cycle counters and start times do not agree on whether lot %1 ran before or after "
               "this load.")
                .arg(subject()),
            tr("Compare counter and start of both cycles with the sterilizer's printouts, and "
               "correct what was typed wrong.")};
}

Words Sentences::orderOffsetUnknown() const
{
    return {tr("Times were taken from the sterilizer's clock, and it is not recorded how far that "
               "clock was off."),
            tr("Find out how far the sterilizer's clock was off when these cycles ran, and record "
               "it with the time from which it holds.")};
}

Words Sentences::orderHistoryDisagrees() const
{
    return {tr("Cycle counter and start of lot %1 do not fit those of another cycle of this "
               "sterilizer: one of them was typed wrong.")
                .arg(subject()),
            tr("Compare counters and starts of this sterilizer's cycles with their printouts, and "
               "correct what was typed wrong.")};
}

Words Sentences::orderOverlaps() const
{
    return {tr("By the times recorded, cycle %1 of this sterilizer ran at the same time as this "
               "load, or ended before it began. One sterilizer runs one cycle at a time.")
                .arg(subject()),
            tr("Check the times of both cycles on their printouts, and correct the wrong one.")};
}

Words Sentences::actUnsigned() const
{
    return {tr("Entries without a name, or made by someone who may only look, among %1: %2. They "
               "cannot help the load.")
                .arg(entries(), count()),
            tr("Have the person who did it record it under their own name.")};
}

Words Sentences::actTimesImpossible() const
{
    if (hasTime()) {
        return {tr("Entries recorded before they happened, or lying in the future: %1. The next of "
                   "those in the future comes at %2.")
                    .arg(count(), time()),
                tr("Check the clock of the workstation and the times of the newest entries, and "
                   "correct what is wrong. If the times are right, look again at %1.")
                    .arg(time())};
    }
    return {
        tr("Entries recorded before they happened, or lying in the future: %1.").arg(count()),
        tr("Check the clock of the workstation and the times of the newest entries, and correct "
           "what is wrong.")};
}

Words Sentences::actRecordedLate() const
{
    return {tr("An entry of this load was recorded long after it happened."), {}};
}

Words Sentences::recordMissing() const
{
    if (subjectIs("sterilizer")) {
        return {tr("It is not recorded which sterilizer ran this load."),
                tr("Record the sterilizer that ran the load.")};
    }
    if (subjectIs("specification")) {
        return {
            tr("The load has no cycle specification, so there is nothing to judge the cycle by."),
            tr("Choose the cycle specification of the program that the load was run with.")};
    }
    if (subjectIs("lot")) {
        return {tr("The load has no lot number."), tr("Give the load its lot number.")};
    }
    if (subjectIs("start")) {
        return {tr("The start of the cycle is not recorded."),
                tr("Record the start of the cycle from the sterilizer's printout or display.")};
    }
    if (subjectIs("end")) {
        return {tr("The end of the cycle is not recorded."),
                tr("When the cycle has ended, record its end from the sterilizer's printout or "
                   "display.")};
    }
    if (subjectIs("operator")) {
        return {tr("It is not recorded who ran the load."), tr("Record who ran the load.")};
    }
    if (subjectIs("items")) {
        return {tr("No item is recorded in this load."),
                tr("Record every item that was in the load, from its label.")};
    }
    return {tr("The record of the load is not complete: %1 is missing.").arg(subject()),
            tr("Record what is missing.")};
}

Words Sentences::recordTimes() const
{
    if (hasTime()) {
        return {
            tr("The times of the cycle lie in the future. This can come right by itself at %1.")
                .arg(time()),
            tr("Compare start and end with the sterilizer's printout and correct the wrong one. "
               "If they are right, look again at %1.")
                .arg(time())};
    }
    return {tr("The times of the cycle cannot be right: it starts after its end, or lies in the "
               "future."),
            tr("Compare start and end with the sterilizer's printout and correct the wrong one.")};
}

Words Sentences::recordTooShort() const
{
    return {tr("From its start to its end the cycle took less time than its readings of exposure "
               "and drying together. These cannot all be of one cycle."),
            tr("Compare start, end and readings with the sterilizer's printout, and correct what "
               "was typed wrong or is of another cycle.")};
}

Words Sentences::recordMethodUnknown() const
{
    return {tr("The cycle specification does not say by which method the load was sterilized."),
            tr("Have a supervisor enter the method in the cycle specification: steam, ethylene "
               "oxide, hydrogen peroxide or dry heat.")};
}

} // namespace loadwarden
