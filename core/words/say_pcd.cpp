// The words of the rules "pcd" and "implant".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::pcdRejected() const
{
    return {
        tr("A chemical indicator in process challenge device (PCD) %1 was rejected. An indicator "
           "that rejects is a failure even where it is expired or otherwise invalid.")
            .arg(subject()),
        tr("%1 Have a lead look for the cause before the sterilizer is used again.")
            .arg(reprocessLoad())};
}

Words Sentences::pcdLost() const
{
    return {tr("A chemical indicator in process challenge device (PCD) %1 cannot be obtained, this "
               "load needs one, and no other was accepted.")
                .arg(subject()),
            reprocessLoad()};
}

Words Sentences::pcdLostNoted() const
{
    return {tr("A chemical indicator in process challenge device (PCD) %1 cannot be obtained. The "
               "load does not fail by that alone.")
                .arg(subject()),
            tr("Look for it, and read it if it is found. If it is not: find out how it was lost, "
               "judge from the rest of the record whether the load is affected, and write why.")};
}

Words Sentences::pcdEmpty() const
{
    return {
        tr("Process challenge device (PCD) %1 is recorded without anything in it.").arg(subject()),
        tr("Record the indicators that were in it. If it was not in the load, correct the "
           "record.")};
}

Words Sentences::pcdUnclear() const
{
    return {tr("A chemical indicator in process challenge device (PCD) %1 was read as unclear.")
                .arg(subject()),
            secondReader()};
}

Words Sentences::pcdInvalidNoted() const
{
    return withCause(
        {tr("Beside another that was accepted, a chemical indicator in process challenge device "
            "(PCD) %1 does not count.")
             .arg(subject()),
         {}},
        {});
}

Words Sentences::pcdInvalid() const
{
    return withCause(
        {tr("A chemical indicator in process challenge device (PCD) %1 does not count as accepted.")
             .arg(subject()),
         tr("Check product, lot, expiry date and time of reading, and correct what was typed "
            "wrong.")},
        tr("If that does not make it count, only another one from the same cycle can: read and "
           "record that."));
}

Words Sentences::pcdNotRead() const
{
    return {tr("A chemical indicator in process challenge device (PCD) %1 has not been read.")
                .arg(subject()),
            readDirections()};
}

Words Sentences::pcdNoneRecorded() const
{
    return {tr("No chemical indicator inside a package or in a process challenge device (PCD) is "
               "recorded. Nothing but what is outside the packages says that they met the "
               "sterilant."),
            tr("If there were any, record them: those that are read at opening with their place "
               "and without a reading.")};
}

Words Sentences::pcdMissing() const
{
    return {tr("This load needs a chemical indicator in a process challenge device (PCD), and none "
               "is recorded."),
            tr("Record the PCD that was in the load, with its indicator. If there was none, "
               "reprocess the load with one.")};
}

Words Sentences::implantBiPositive() const
{
    return {tr("The load has an implant, and a biological indicator (BI) of the load is positive."),
            tr("Let no implant of this load be used; tell the supervisor and infection control. %1")
                .arg(reprocessLoad())};
}

Words Sentences::implantIndicatorRejected() const
{
    return {
        tr("The load has an implant, and a chemical indicator that it needs in process challenge "
           "device (PCD) %1 was rejected.")
            .arg(subject()),
        tr("Let no implant of this load be used. %1").arg(reprocessLoad())};
}

Words Sentences::implantMissing() const
{
    const QString next =
        tr("Record the PCD that was in the load, with its BI and its chemical "
           "indicator. If there was none, reprocess the implants with one. An item "
           "whose record does not say counts as an implant: record it where it is "
           "not.");
    if (is(Outcome::note)) {
        return {
            tr("The load has an implant, and no process challenge device (PCD) with a biological "
               "indicator (BI) is recorded. The implants wait for it; the other items do not."),
            next};
    }
    return {tr("The load has an implant, and no process challenge device (PCD) with a biological "
               "indicator (BI) is recorded."),
            next};
}

Words Sentences::implantIndicatorMissing() const
{
    return {tr("The load has an implant, and no process challenge device (PCD) that can still "
               "count is recorded with a chemical indicator of a type that implants need. A "
               "biological indicator alone does not release an implant."),
            tr("If there was one in the PCD, record it with its product and reading, or correct a "
               "product that was typed wrong. If there was none, hold the implants and reprocess "
               "them in a load that has one. An item whose record does not say "
               "counts as an implant: record it where it is not.")};
}

Words Sentences::implantPending() const
{
    const QString next =
        tr("Read the BI, its control and the chemical indicators of the PCD when "
           "each is due, and record them. An item whose record does not say counts "
           "as an implant: record it where it is not.");
    if (is(Outcome::note)) {
        return {
            tr("The implants of this load wait until its biological indicator (BI) is negative, "
               "the control has grown and the chemical indicators of the process challenge "
               "device (PCD) are accepted. The other items do not wait for that."),
            next};
    }
    return {tr("The load has an implant and waits until its biological indicator (BI) is negative, "
               "the control has grown and the chemical indicators of the process challenge device "
               "(PCD) are accepted."),
            next};
}

Words Sentences::implantImpossible() const
{
    return {tr("The load has an implant, and none of its process challenge devices (PCD) can any "
               "longer show both a negative biological indicator (BI) and accepted chemical "
               "indicators."),
            tr("Let no implant of this load be used. Reprocess every item of the load, with a PCD "
               "that holds a new BI and a new chemical indicator.")};
}

} // namespace loadwarden
