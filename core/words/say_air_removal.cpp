// The words of the rule "air-removal".
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::airRemovalMethodUnknown() const
{
    return {
        tr("It is not recorded how this cycle sterilizes or removes air, so it cannot be said "
           "whether it needs a Bowie-Dick test."),
        tr("Have a supervisor enter method and air removal in the cycle specification, from the "
           "sterilizer's instructions for use.")};
}

Words Sentences::airRemovalPutRightLate() const
{
    return {tr("The failed Bowie-Dick test of lot %1 was put right before this load, but that was "
               "recorded late.")
                .arg(subject()),
            tr("Check what was done, when, and that a test passed after it and before this load; "
               "then write why the load is or is not affected.")};
}

Words Sentences::airRemovalFailed() const
{
    return {
        tr("The Bowie-Dick test of lot %1 failed, and was not put right before this load. A bare "
           "repeat does not put a failed test right: the cause must be found, mended and "
           "recorded by a lead, and a test must pass after that.")
            .arg(subject()),
        tr("Stop the sterilizer until that is done. %1").arg(reprocessLoad())};
}

Words Sentences::airRemovalNotRead() const
{
    return {
        tr("The Bowie-Dick test of lot %1 has no result yet that counts.").arg(subject()),
        tr("Read the sheet now and record it. An unclear sheet needs a second named reader. If it "
           "was read: check start, end and exposure of the test, and its sheet.")};
}

Words Sentences::airRemovalVoid() const
{
    return withCause(
        {tr("The Bowie-Dick test of lot %1 was void, and no lead has recorded why. It shows "
            "nothing about this load.")
             .arg(subject()),
         tr("Have a lead record why it was void. A void test does not count as made: another "
            "must have passed before this load in the same test period.")},
        tr("If it stays void, have a lead record why. A void test does not count as made: another "
           "must have passed before this load in the same test period."));
}

Words Sentences::airRemovalNoneYet() const
{
    const QString next = tr("If the test was run, record it and its result. If it was not, run no "
                            "further load, and run and read the test now. A test that comes after "
                            "this load does not by itself let it go.");
    if (hasTime()) {
        return {tr("No Bowie-Dick test is recorded before or after this load in its test period. "
                   "The period "
                   "ends at %1; without a test by then the load fails.")
                    .arg(time()),
                next};
    }
    return {tr("No Bowie-Dick test is recorded before or after this load in its test period."),
            next};
}

Words Sentences::airRemovalNoneMade() const
{
    return {tr("No Bowie-Dick test was made in the test period of this load, so nothing shows that "
               "air was removed."),
            tr("%1 Run a Bowie-Dick test that passes before the next load.").arg(reprocessLoad())};
}

Words Sentences::airRemovalMadeAfter() const
{
    if (is(Outcome::fails)) {
        return {tr("No Bowie-Dick test passed before this load in its test period; the first one, "
                   "lot %1, came after it.")
                    .arg(subject()),
                reprocessLoad()};
    }
    return {
        tr("The Bowie-Dick test of lot %1 passed, but it came after this load instead of before "
           "it.")
            .arg(subject()),
        tr("Find out why the test came late, judge whether this load is affected, and write "
           "why.")};
}

Words Sentences::airRemovalFailedAfter() const
{
    return {
        tr("A Bowie-Dick test passed before this load, but the next one after it, lot %1, "
           "failed.")
            .arg(subject()),
        tr("Find out whether the fault can have begun before this load had ended, judge whether "
           "the load is affected, and write why. Stop the sterilizer until the failed test is "
           "put right.")};
}

} // namespace loadwarden
