#include "core/words/say.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {

namespace {

using testing::AllOf;
using testing::HasSubstr;
using testing::Not;

Finding make(Key key, Outcome outcome, std::string subject = {})
{
    Finding finding;
    finding.key = key;
    finding.outcome = outcome;
    finding.subject = std::move(subject);
    return finding;
}

Said said(Key key, Outcome outcome, std::string subject = {})
{
    return say(make(key, outcome, std::move(subject)), HouseStyle{});
}

} // namespace

TEST(Sentences, APhysicalFailureNamesValueAndLimitAsTyped)
{
    Finding finding = make(Key::physicalBelow, Outcome::fails, "temperature");
    finding.value = Quantity{Unit::celsius, 131'900};
    finding.limit = Quantity{Unit::celsius, 132'000};
    EXPECT_EQ(say(finding, HouseStyle{}).says,
              "A reading lies below its least limit: temperature; it was 131.9 °C and must be at "
              "least 132 °C.");
    finding.limit.reset();
    EXPECT_EQ(say(finding, HouseStyle{}).says,
              "A reading lies below its least limit: temperature.");
}

TEST(Sentences, AMilderLimitAndAnImplausibleReadingAreNamedAsTyped)
{
    Finding finding = make(Key::physicalLimitMilder, Outcome::waits, "exposure");
    finding.limit = Quantity{Unit::minutes, 3'500};
    EXPECT_THAT(say(finding, HouseStyle{}).says,
                HasSubstr("program is set to: exposure time, least limit 3.5 min."));
    finding = make(Key::physicalImplausible, Outcome::waits, "temperature");
    finding.value = Quantity{Unit::celsius, 270'000};
    EXPECT_THAT(say(finding, HouseStyle{}).says, HasSubstr("by itself: temperature, 270 °C."));
}

// Common practice, no source: another program's printout proves nothing, whoever signs for it.
TEST(Sentences, ConfirmationIsOfferedOnlyWhereItHelps)
{
    for (const char* field : {"program", "sterilizer"}) {
        EXPECT_THAT(said(Key::printoutDiffers, Outcome::waits, field).next,
                    AllOf(HasSubstr("correct what was typed wrong"), Not(HasSubstr("confirm"))));
        EXPECT_THAT(said(Key::printoutIncomplete, Outcome::waits, field).next,
                    HasSubstr("confirm the record in this one thing"));
    }
    for (const char* field : {"counter", "start", "end"}) {
        EXPECT_THAT(said(Key::printoutDiffers, Outcome::waits, field).next,
                    HasSubstr("confirm it in this one thing"));
    }
}

TEST(Sentences, TypedTemperaturesKeepTheirUnitInAFahrenheitHouse)
{
    Finding finding = make(Key::physicalAbove, Outcome::review, "temperature");
    finding.value = Quantity{Unit::celsius, 138'100};
    finding.limit = Quantity{Unit::fahrenheit, 280'000};
    EXPECT_THAT(say(finding, HouseStyle{{}, true}).says,
                HasSubstr("it was 138.1 °C and may be at most 280 °F"));
}

TEST(Sentences, AReadingAboveItsLimitIsReviewedOrReprocessed)
{
    EXPECT_THAT(said(Key::physicalAbove, Outcome::review, "temperature").next,
                HasSubstr("write why"));
    EXPECT_THAT(said(Key::physicalAbove, Outcome::fails, "temperature").next,
                HasSubstr("Reprocess"));
}

TEST(Sentences, AReviewSaysWhoMayGiveIt)
{
    Finding finding = make(Key::packagesOneRejected, Outcome::review);
    finding.reviewer = Reviewer::lead;
    EXPECT_THAT(say(finding, HouseStyle{}).says,
                HasSubstr("A lead who neither recorded it nor ran the load, or a supervisor, must "
                          "review it."));
    finding.reviewer = Reviewer::supervisor;
    EXPECT_THAT(say(finding, HouseStyle{}).says, HasSubstr("A supervisor must review it."));
    finding.reviewer = Reviewer::secondSupervisor;
    EXPECT_THAT(say(finding, HouseStyle{}).says,
                HasSubstr("A second supervisor, who did not record it, must review it."));
}

TEST(Sentences, AReviewedFindingSaysSoAndAsksForNothing)
{
    Finding finding = make(Key::packagesOneRejected, Outcome::note);
    finding.reviewer = Reviewer::lead;
    finding.reviewed = true;
    const Said s = say(finding, HouseStyle{});
    EXPECT_EQ(s.says, "One package of this load has a rejected chemical indicator. A lead or "
                      "supervisor reviewed it: this load is not affected.");
    EXPECT_EQ(s.next, "");
}

TEST(Sentences, WhatTheLoadNeedsAndWhatItDoesNotNeedAreSaidApart)
{
    EXPECT_THAT(said(Key::biDue, Outcome::waits, "V-1").says, HasSubstr("The load waits for it."));
    EXPECT_THAT(said(Key::biDue, Outcome::note, "V-1").says,
                HasSubstr("This load does not wait for it, but growth would fail it."));
    EXPECT_THAT(said(Key::biVoid, Outcome::fails, "V-1").says,
                HasSubstr("This load needs a negative"));
    EXPECT_THAT(said(Key::biVoid, Outcome::note, "V-1").says,
                HasSubstr("which this load does not need"));
    EXPECT_THAT(said(Key::implantPending, Outcome::note).says,
                AllOf(HasSubstr("The implants of this load wait"),
                      HasSubstr("The other items do not wait")));
    EXPECT_THAT(said(Key::implantPending, Outcome::waits).says,
                HasSubstr("The load has an implant and waits"));
    EXPECT_THAT(said(Key::routineNone, Outcome::note).says, HasSubstr("does not wait"));
    EXPECT_THAT(said(Key::itemInternalInvalid, Outcome::note, "P-1").says,
                HasSubstr("does not need to be released"));
    EXPECT_THAT(said(Key::itemCycleNoneRecorded, Outcome::waits).says,
                HasSubstr("The item waits for that."));
}

TEST(Sentences, AMomentAtWhichSomethingChangesIsNeverSaidTooEarly)
{
    Finding finding = make(Key::aerationRunning, Outcome::waits);
    finding.changesAt = parseInstant("2031-03-04T07:14:00Z");
    EXPECT_THAT(say(finding, HouseStyle{}).says,
                HasSubstr("reached at 4 Mar 2031 07:14 (UTC+00:00)"));
    finding.changesAt = parseInstant("2031-03-04T07:14:00.001Z");
    EXPECT_THAT(say(finding, HouseStyle{}).next, HasSubstr("until 4 Mar 2031 07:15 (UTC+00:00)"));
    finding.changesAt = parseInstant("2031-03-04T23:59:30Z");
    EXPECT_THAT(say(finding, HouseStyle{}).says, HasSubstr("at 5 Mar 2031 00:00"));
}

TEST(Sentences, TimesStandInTheZoneOfTheHouse)
{
    Finding finding = make(Key::airRemovalNoneYet, Outcome::waits);
    finding.changesAt = parseInstant("2031-03-04T13:14:00Z");
    const HouseStyle style{Zone::find("America/Chicago"), false};
    ASSERT_TRUE(style.zone);
    EXPECT_THAT(say(finding, style).says, HasSubstr("ends at 4 Mar 2031 07:14;"));
}

// An incubating vial may change first because its control counts as missing, long before it may be
// read: the words must not call that moment the time of reading.
TEST(Sentences, AnIncubatingVialIsNotCalledReadableAtTheMomentItChanges)
{
    Finding finding = make(Key::biIncubating, Outcome::waits, "V-1");
    finding.changesAt = parseInstant("2031-03-04T07:14:00Z");
    const Said s = say(finding, HouseStyle{});
    EXPECT_THAT(s.says, HasSubstr("4 Mar 2031 07:14"));
    EXPECT_THAT(s.next, AllOf(HasSubstr("Look again at 4 Mar 2031 07:14"),
                              HasSubstr("only after the full time"), HasSubstr("control")));
}

TEST(Sentences, AControlThatIsAwaitedIsNamedWithItsTime)
{
    Finding finding = make(Key::biControl, Outcome::waits, "V-1");
    EXPECT_THAT(say(finding, HouseStyle{}).says, Not(HasSubstr("counts as missing")));
    finding.changesAt = parseInstant("2031-03-04T07:14:00Z");
    EXPECT_THAT(say(finding, HouseStyle{}).says,
                HasSubstr("from 4 Mar 2031 07:14 (UTC+00:00) on it counts as missing."));
}

TEST(Sentences, NumbersOfPackagesAreSaid)
{
    Finding finding = make(Key::packagesWet, Outcome::review);
    finding.count = 2;
    EXPECT_THAT(say(finding, HouseStyle{}).says, HasSubstr("Wet packages in this load: 2."));
}

TEST(Sentences, UnnamedPlacesAreSaidToBeUnnamed)
{
    EXPECT_THAT(said(Key::itemInternalRejected, Outcome::fails).says,
                HasSubstr("(place not stated)"));
    EXPECT_THAT(said(Key::itemInternalRejected, Outcome::fails, "lower tray").says,
                HasSubstr("(lower tray)"));
}

// Common practice, no source, unless the product's directions say otherwise.
TEST(Sentences, AMovingFrontNeedNotFillTheZone)
{
    for (const Key key : {Key::pcdNotRead, Key::itemInternalNotRead, Key::testIndicatorPending}) {
        EXPECT_THAT(said(key, Outcome::waits, "P-1").next,
                    HasSubstr("need only have entered the accept zone; it need not fill it"));
    }
}

// CDC Guideline (2008), external indicators (restated).
TEST(Sentences, TapeShowsExposureNotSterility)
{
    EXPECT_THAT(said(Key::itemExternalNotRead, Outcome::waits).next,
                AllOf(HasSubstr("type 1"), HasSubstr("does not show that it is sterile")));
}

// Common practice, no source.
TEST(Sentences, ARejectionCountsEvenFromAnExpiredIndicator)
{
    for (const Key key : {Key::pcdRejected, Key::itemExternalRejected, Key::itemInternalRejected}) {
        EXPECT_THAT(said(key, Outcome::fails, "P-1").says, HasSubstr("even where it is expired"));
    }
}

// 132 °C 4 min: CDC Guideline (2008), Table 7. 135 °C 3 min: ANSI/AAMI ST79 (from memory).
TEST(Sentences, HotterAndShorterIsNotMore)
{
    Finding finding = make(Key::itemCycleNotAllowed, Outcome::fails, "D-1");
    finding.cause = Cause::temperature;
    EXPECT_THAT(say(finding, HouseStyle{{}, false}).says,
                HasSubstr("135 °C for 3 min does not stand in for 132 °C for 4 min"));
    EXPECT_THAT(say(finding, HouseStyle{{}, true}).says,
                HasSubstr("275 °F for 3 min does not stand in for 270 °F for 4 min"));
}

// CDC Guideline (2008) and public training texts (restated).
TEST(Sentences, ABareRepeatDoesNotPutAFailedAirRemovalTestRight)
{
    EXPECT_THAT(said(Key::airRemovalFailed, Outcome::fails, "T-1").says,
                HasSubstr("A bare repeat does not put a failed test right"));
    EXPECT_THAT(said(Key::testSheetFailed, Outcome::fails).next,
                HasSubstr("A bare repeat does not put a failed test right"));
}

// CDC Guideline (2008), text on positive biological indicators (restated).
TEST(Sentences, ALaterNegativeDoesNotFreeALoadInScope)
{
    EXPECT_THAT(said(Key::scopeInPositive, Outcome::review, "L-1").next,
                HasSubstr("Neither a negative BI that came later nor the closing of the incident "
                          "frees this load without that review."));
}

// Gloves: public training texts (restated). The rest: makers' instructions for use.
TEST(Sentences, AbortsOfGasCyclesNameTheMakersStepsAndGloves)
{
    for (const Key key : {Key::cycleAborted, Key::testAborted}) {
        EXPECT_THAT(said(key, Outcome::fails).next,
                    AllOf(HasSubstr("ethylene oxide or hydrogen peroxide"), HasSubstr("gloves"),
                          HasSubstr("abort"), HasSubstr("purging")));
    }
}

TEST(Sentences, TheCautionPutsInstructionsPolicyCodesAndPracticeFirst)
{
    EXPECT_EQ(caution(), "Loadwarden recommends; a named person decides and signs. Makers' "
                         "instructions for use (IFU), facility policy, local codes and licensed "
                         "practice come first.");
}

TEST(Sentences, VerdictsResultsAndOutcomesHaveWords)
{
    EXPECT_EQ(say(Verdict::release), "Release");
    EXPECT_EQ(say(Verdict::quarantine), "Quarantine");
    EXPECT_EQ(say(Verdict::reprocess), "Reprocess");
    EXPECT_EQ(say(TestResult::failed), "Failed");
    EXPECT_EQ(say(TestResult::voided), "Void");
    EXPECT_EQ(say(TestResult::pending), "Pending");
    EXPECT_EQ(say(TestResult::passed), "Passed");
    EXPECT_EQ(say(Outcome::note), "Note");
    EXPECT_EQ(say(Outcome::waits), "Waits for evidence");
    EXPECT_EQ(say(Outcome::review), "Waits for a review");
    EXPECT_EQ(say(Outcome::fails), "Failed evidence");
}

} // namespace loadwarden
