// The words of the item rule "cycle-allowed".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::itemCycleNoneRecorded() const
{
    const QString next =
        tr("Look up which cycles the instructions for use of each device allow, and "
           "record them.");
    if (is(Outcome::note)) {
        return {tr("For a device of this item no allowed cycle is recorded, so nothing shows that "
                   "its instructions for use allow this one. The item does not wait for that."),
                next};
    }
    return {tr("For a device of this item no allowed cycle is recorded, so nothing shows that its "
               "instructions for use allow this one. The item waits for that."),
            next};
}

Words Sentences::itemCycleValueMissing() const
{
    return {
        tr("It cannot be said whether the instructions for use of %1 allow this cycle: a value "
           "is missing in them or in the cycle specification.")
            .arg(subject()),
        tr("Complete the allowed cycles of %1 from its instructions for use, and the settings in "
           "the cycle specification.")
            .arg(subject())};
}

Words Sentences::itemCycleNotAllowed() const
{
    return withCause(
        {tr("The instructions for use of %1, as recorded, do not allow this cycle.").arg(subject()),
         tr("Do not use the item. Reprocess it, rewrapped with new indicators, in a "
            "cycle that its instructions for use allow.")},
        tr("If both are recorded as they are, do not use the item. Reprocess it, "
           "rewrapped with new indicators, in a cycle that its instructions for use "
           "allow."));
}

Words Sentences::itemCycleExtended() const
{
    return {tr("The cycle is an extended one. Indicators answer for the standard cycle; only the "
               "physical record shows the rest."),
            {}};
}

} // namespace loadwarden
