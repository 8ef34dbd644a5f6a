// The words of the rules "printout" and "verification".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::printoutWrongCycle() const
{
    return {tr("Somebody compared printout and record and found that the load ran in the wrong "
               "cycle or the wrong sterilizer."),
            reprocessLoad()};
}

Words Sentences::printoutLost() const
{
    return {tr("The sterilizer's printout cannot be obtained, so nothing shows that the record is "
               "of this cycle."),
            reprocessLoad()};
}

Words Sentences::printoutMissing() const
{
    return withEntryCause(
        tr("No printout of this cycle is recorded that shows anything to compare."),
        tr("A printout of this cycle is recorded, but it does not count."),
        tr("Take the sterilizer's printout of this cycle after its end, and record its program, "
           "sterilizer, cycle counter, start and end under your name. If it cannot be obtained, "
           "record it as lost."));
}

Words Sentences::printoutIncomplete() const
{
    const QString next = tr("Fill in what is missing. If the printout does not show it, have a "
                            "lead who neither ran the load nor recorded the printout compare both "
                            "and confirm the record in this one thing. That counts only while the "
                            "counter, the start or the end agrees by itself.");
    if (subjectIs("program")) {
        return {tr("Printout and cycle specification cannot be compared by program: it is missing "
                   "in one of them."),
                next};
    }
    if (subjectIs("sterilizer")) {
        return {tr("Printout and record cannot be compared by sterilizer: it is missing in one of "
                   "them."),
                next};
    }
    if (subjectIs("counter")) {
        return {tr("Printout and record cannot be compared by cycle counter: it is missing in one "
                   "of them."),
                next};
    }
    if (subjectIs("start")) {
        return {tr("The start of the cycle is not recorded from the printout."), next};
    }
    if (subjectIs("end")) {
        return {tr("The end of the cycle is not recorded from the printout."), next};
    }
    return {
        tr("Printout and record cannot be compared: %1 is missing in one of them.").arg(subject()),
        next};
}

Words Sentences::printoutOffsetUnknown() const
{
    return {tr("The printout shows the sterilizer's clock, and it is not recorded how far that "
               "clock was off."),
            tr("Record how far the sterilizer's clock was off. If nobody can say, have a lead who "
               "neither ran the load nor recorded the printout compare both and confirm start and "
               "end: that counts only where the counter agrees by itself.")};
}

Words Sentences::printoutCounterUsed() const
{
    return {
        tr("The cycle counter of the printout or of the record belongs to another cycle of this "
           "sterilizer."),
        tr("Make sure that this is the printout of this load, and correct a counter that was "
           "typed wrong. If the record is right as it is, have a lead who neither ran the load "
           "nor recorded the printout confirm the counter: that counts only where the start or the "
           "end agrees by itself.")};
}

Words Sentences::printoutDiffers() const
{
    // No confirmation helps here: such a printout is no evidence for this load.
    const QString correct =
        tr("Make sure that this is the printout of this load, and correct what was typed wrong. "
           "If the load ran in the wrong cycle or sterilizer, say so.");
    if (subjectIs("program")) {
        return {tr("The printout names another program than the cycle specification of this load."),
                correct};
    }
    if (subjectIs("sterilizer")) {
        return {tr("The printout names another sterilizer than the record of this load."), correct};
    }
    const QString confirm =
        tr("Make sure that this is the printout of this load, and correct what was typed wrong. "
           "If the record is right as it is, have a lead who neither ran the load nor recorded "
           "the printout confirm it in this one thing; that counts only while the counter, the "
           "start or the end agrees by itself. If the load ran in the wrong cycle or sterilizer, "
           "say so.");
    if (subjectIs("counter")) {
        return {tr("Printout and record show different cycle counters."), confirm};
    }
    if (subjectIs("start")) {
        return {tr("Printout and record show different times for the start of the cycle."),
                confirm};
    }
    if (subjectIs("end")) {
        return {tr("Printout and record show different times for the end of the cycle."), confirm};
    }
    return {tr("Printout and record differ: %1.").arg(subject()), confirm};
}

Words Sentences::printoutConfirmed() const
{
    return {tr("Printout and record do not fully agree: %1. A lead or supervisor who neither ran "
               "the load nor recorded the printout confirmed that the record is right in this.")
                .arg(printoutField()),
            {}};
}

Words Sentences::verificationMissing() const
{
    return {tr("Nobody has verified the physical record of this cycle."),
            tr("After the end of the cycle, compare printout and readings with the cycle "
               "specification, and sign the verification.")};
}

Words Sentences::verificationByOperator() const
{
    return {tr("The physical record was verified only by the person who ran the load. Another "
               "pair of eyes would see more."),
            {}};
}

Words Sentences::verificationStale() const
{
    return {tr("The physical record was verified before the cycle ended, or before its newest "
               "reading or printout was recorded."),
            tr("Compare printout and readings with the cycle specification once more, and sign the "
               "verification again.")};
}

} // namespace loadwarden
