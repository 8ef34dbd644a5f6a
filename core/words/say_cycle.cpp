// The words of the rules "cycle-end" and "immediate".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::cycleNotEnded() const
{
    return {tr("It is not recorded whether the cycle ended or was aborted."),
            tr("When the cycle is over, record how it ended from the sterilizer's printout or "
               "display.")};
}

Words Sentences::cycleAborted() const
{
    return {tr("The cycle was aborted, or a phase of abort is recorded for it. The load counts as "
               "not sterilized."),
            tr("%1 %2", "two steps in turn").arg(guardedDoor(), reprocessLoad())};
}

Words Sentences::cycleAbortedDrying() const
{
    return {
        tr("The cycle was aborted in drying. Packages may be moist inside even where they feel "
           "dry."),
        tr("Let the load cool, then reprocess every item of it: rewrap in dry materials, add new "
           "indicators, and run a whole cycle. Waiting or drying longer does not put it "
           "right.")};
}

Words Sentences::alarmExposure() const
{
    return {tr("Alarm %1 is one that can affect exposure.").arg(subject()),
            tr("%1 Tell a lead about the alarm before the sterilizer is used again.")
                .arg(reprocessLoad())};
}

Words Sentences::alarmNotListed() const
{
    return {tr("It is not recorded whether alarm %1 is harmless or can affect exposure.")
                .arg(subject()),
            tr("Look alarm %1 up in the sterilizer's instructions for use, judge whether it could "
               "have affected this load, and write why.")
                .arg(subject())};
}

Words Sentences::immediateNotSteam() const
{
    return {tr("The cycle was for immediate use, but not with steam."),
            tr("Reprocess every item, packed, in a routine cycle that its instructions for use "
               "allow.")};
}

Words Sentences::immediateForStorage() const
{
    return {tr("The cycle was for immediate use, but the items are meant for storage. Nothing from "
               "such a cycle is stored."),
            tr("Reprocess every item, packed, in a routine cycle that its instructions for use "
               "allow.")};
}

Words Sentences::immediatePurposeDiffers() const
{
    return {tr("The load is recorded with a statement about immediate use, but its cycle "
               "specification is one for routine loads."),
            tr("Find out how the load was run. Record the cycle specification of immediate use, or "
               "take the statement out where it belongs to another load.")};
}

Words Sentences::immediateStorageUnknown() const
{
    return {tr("The cycle was for immediate use, and it is not recorded whether the items go "
               "straight to use."),
            tr("Record whether the items go straight to the procedure or to storage.")};
}

Words Sentences::immediateReasonMissing() const
{
    return {tr("The cycle was for immediate use, and no reason is recorded."),
            tr("Record why the items could not be processed in a routine cycle.")};
}

Words Sentences::immediateCaseMissing() const
{
    return {tr("The cycle was for immediate use, and no case is recorded."),
            tr("Record the case reference. Do not write the patient's name.")};
}

} // namespace loadwarden
