// The words of the tests: warm-up, Bowie-Dick, leak, qualification.
#include "core/words/sentences.h"

namespace loadwarden {

Words Sentences::testItemsInside() const
{
    return {tr("Items were in the test cycle. The test is void, and the items are not sterile for "
               "use."),
            tr("Take the items out and reprocess them. %1").arg(repeatTest())};
}

Words Sentences::testNotEnded() const
{
    return {tr("It is not recorded whether the test cycle ended or was aborted."),
            tr("When the cycle is over, record how it ended.")};
}

Words Sentences::testTimes() const
{
    return {tr("The test cycle is recorded as over before it began."),
            tr("Compare its start and end with the printout, and correct what was typed wrong.")};
}

Words Sentences::testAborted() const
{
    return {tr("The test cycle was aborted."),
            tr("%1 Find out why, then run the test again.").arg(guardedDoor())};
}

Words Sentences::testNotSteam() const
{
    return {tr("The Bowie-Dick test did not run in a steam cycle. It is void."),
            tr("Check the method that is recorded for the test. %1").arg(repeatTest())};
}

Words Sentences::testSheetFailed() const
{
    return {tr("The Bowie-Dick test failed: the sheet did not change evenly and completely, or "
               "stayed unclear. Air was not removed as it must be."),
            tr("Stop the sterilizer and tell the supervisor. Find and mend the cause, have a lead "
               "record it, then run a new test. A bare repeat does not put a failed test right.")};
}

Words Sentences::testSheetLost() const
{
    return {
        tr("The Bowie-Dick sheet cannot be obtained. The test counts as failed."),
        tr("Stop the sterilizer and tell the supervisor. Have a lead record what happened, then "
           "run a new test.")};
}

Words Sentences::testSheetSpoiled() const
{
    return withCause(
        {tr("The test is void, because its Bowie-Dick sheet does not count."),
         tr("Take a Bowie-Dick sheet that is in date. %1").arg(repeatTest())},
        tr("If that does not make it count, take another Bowie-Dick sheet. %1").arg(repeatTest()));
}

Words Sentences::testChamberNotEmpty() const
{
    return {tr("The chamber was not empty but for the Bowie-Dick test. The test is void."),
            tr("Empty the chamber. %1").arg(repeatTest())};
}

Words Sentences::testOutsideDirections() const
{
    const QString told = readAgainst(tr("it was %1, the limit is %2"));
    return {told.isEmpty()
                ? tr("Time or temperature of exposure lay outside the directions of the Bowie-Dick "
                     "test. The test is void.")
                : tr("Time or temperature of exposure lay outside the directions of the Bowie-Dick "
                     "test: %1. The test is void.")
                      .arg(told),
            tr("Set the cycle as the test's directions say. %1").arg(repeatTest())};
}

Words Sentences::testDryingRun() const
{
    return {tr("The cycle ran a drying phase, which the directions of this Bowie-Dick test forbid. "
               "The test is void."),
            tr("Choose the cycle without drying. %1").arg(repeatTest())};
}

Words Sentences::testNotRead() const
{
    return {
        tr("The test has no signed result yet that counts."),
        tr("Read the result now and record all of it under your name: for a Bowie-Dick test the "
           "sheet, for a leak test the settling time, the test time and the rise in pressure.")};
}

Words Sentences::testUnclear() const
{
    return {tr("The Bowie-Dick sheet was read as unclear."),
            tr("Run no load. %1").arg(secondReader())};
}

Words Sentences::testExposureUnknown() const
{
    return {
        tr("It is not fully recorded whether the Bowie-Dick test was run by its directions."),
        tr("Record time and temperature of exposure, whether the chamber was empty, and whether "
           "a drying phase ran.")};
}

Words Sentences::testDirectionsMissing() const
{
    return {tr("The directions of the Bowie-Dick sheet are not recorded: how long and how hot its "
               "exposure may be."),
            tr("Record for its product the least and most time and temperature of exposure, from "
               "its instructions for use.")};
}

Words Sentences::testReadLate() const
{
    return {tr("The Bowie-Dick sheet was read late. It should be read at once."), {}};
}

Words Sentences::testNoWarmUp() const
{
    return {
        tr("No warm-up cycle is recorded before this Bowie-Dick test in the same test period. In "
           "a cold sterilizer the test may fail for that alone."),
        {}};
}

Words Sentences::testLeakTooHigh() const
{
    return {tr("The pressure rose faster in the leak test than it may. The chamber is not tight "
               "enough."),
            tr("Stop the sterilizer and tell the supervisor. Have the leak found and mended, then "
               "run the test again.")};
}

Words Sentences::testLeakImplausible() const
{
    return {tr("The leak test is recorded with a falling pressure, which no leak makes."),
            tr("Read the pressures of the leak test again, and correct what was typed wrong.")};
}

Words Sentences::testLeakTooShort() const
{
    return {tr("The leak test had too little time to settle or to run. The test is void."),
            repeatTest()};
}

Words Sentences::testPhysicalFailed() const
{
    return {tr("The physical readings of the qualification cycle were not good."),
            tr("Keep the sterilizer out of service. Find and mend the cause, then start the "
               "qualification from the beginning.")};
}

Words Sentences::testIndicatorRejected() const
{
    return {tr("A chemical indicator of the qualification cycle was rejected."),
            tr("Keep the sterilizer out of service. Find and mend the cause, then start the "
               "qualification from the beginning.")};
}

Words Sentences::testBiPositive() const
{
    return {tr("The biological indicator (BI) of the qualification cycle is positive. That is a "
               "positive of the sterilizer."),
            tr("Keep the sterilizer out of service, and tell the supervisor and infection control. "
               "Find and mend the cause, then start the qualification from the beginning.")};
}

Words Sentences::testBiVoid() const
{
    return withCause(
        {tr("The biological indicator (BI) of the qualification cycle is void and shows nothing, "
            "so that the cycle does not count."),
         tr("Run the qualification cycle again with a new BI and a control of the same lot.")},
        tr("If that does not make it count, run the qualification cycle again with a new BI and a "
           "control of the same lot."));
}

Words Sentences::testPhysicalMissing() const
{
    return {
        tr("It is not recorded under a name whether the physical readings of the qualification "
           "cycle were good."),
        tr("Compare them with the cycle specification, and record the answer under your name.")};
}

Words Sentences::testIndicatorPending() const
{
    return {tr("The qualification cycle has no chemical indicator yet, or one that is not accepted "
               "yet."),
            tr("Record the chemical indicators and read each by the product's directions. A moving "
               "front need only have entered the accept zone; it need not fill it.")};
}

Words Sentences::testBiPending() const
{
    return {tr("The biological indicator (BI) of the qualification cycle is not final yet."),
            tr("Read it and its control when they are due, and record both.")};
}

} // namespace loadwarden
