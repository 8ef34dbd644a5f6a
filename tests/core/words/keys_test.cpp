#include "core/words/say.h"
#include "tests/core/words/well_said.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <array>
#include <cstddef>
#include <set>
#include <string>
#include <vector>

namespace loadwarden {

namespace {

using test_words::hasMarker;
using test_words::isSentence;

const std::array<const char*, static_cast<std::size_t>(keyCount)> keyTexts{
#define LW_KEY(enumerator, text, rule) text,
#include "core/release/finding_keys.def"
#undef LW_KEY
};

std::string nameOf(Key key)
{
    return keyTexts.at(static_cast<std::size_t>(key));
}

/// A way in which a key can be said.
struct Saying {
    Key key{};
    Outcome outcome{};
    Reviewer reviewer = Reviewer::none;
    bool reviewed = false;
};

/// By RULES.md, sections 2 to 7. A reviewable key is a note once it was reviewed.
struct Row {
    std::vector<Key> keys;
    std::vector<Outcome> outcomes;
    Reviewer reviewer = Reviewer::none;
};

const std::vector<Row>& rows()
{
    using enum Outcome;
    static const std::vector<Row> rows{
        {{Key::orderDisagrees,
          Key::orderOffsetUnknown,
          Key::orderOverlaps,
          Key::orderHistoryDisagrees,
          Key::actUnsigned,
          Key::actTimesImpossible,
          Key::recordMissing,
          Key::recordTimes,
          Key::recordTooShort,
          Key::recordMethodUnknown,
          Key::printoutMissing,
          Key::printoutIncomplete,
          Key::printoutOffsetUnknown,
          Key::printoutCounterUsed,
          Key::printoutDiffers,
          Key::cycleNotEnded,
          Key::sterilizerServiceUnknown,
          Key::airRemovalMethodUnknown,
          Key::airRemovalNotRead,
          Key::airRemovalVoid,
          Key::airRemovalNoneYet,
          Key::physicalSettingsMissing,
          Key::physicalLimitsMissing,
          Key::physicalLimitImplausible,
          Key::physicalLimitsDisagree,
          Key::physicalLimitMilder,
          Key::physicalImplausible,
          Key::physicalAtmosphereUnknown,
          Key::physicalMissing,
          Key::traceMissing,
          Key::traceOtherCycle,
          Key::traceOtherSpecification,
          Key::traceDiffers,
          Key::verificationMissing,
          Key::verificationStale,
          Key::pcdEmpty,
          Key::pcdUnclear,
          Key::pcdInvalid,
          Key::pcdNotRead,
          Key::pcdMissing,
          Key::biMissing,
          Key::aerationNotStated,
          Key::aerationImplausible,
          Key::aerationRunning,
          Key::aerationEndAwaited,
          Key::aerationNotDone,
          Key::immediateStorageUnknown,
          Key::immediateReasonMissing,
          Key::immediateCaseMissing,
          Key::immediatePurposeDiffers,
          Key::itemRecordedLate,
          Key::itemExternalNotRead,
          Key::itemExternalUnclear,
          Key::itemExternalInvalid,
          Key::itemNotChecked,
          Key::itemNotCooled,
          Key::itemLabelDiffers,
          Key::itemPackagingNotStated,
          Key::itemPackagingExpired,
          Key::itemInternalUnclear,
          Key::itemInternalNotRead,
          Key::itemInternalMissing,
          Key::itemCycleValueMissing,
          Key::itemImplantImmediateUse,
          Key::itemImplantWaits,
          Key::itemPeroxideUnknown},
         {waits}},
        {{Key::printoutWrongCycle,
          Key::printoutLost,
          Key::cycleAborted,
          Key::cycleAbortedDrying,
          Key::alarmExposure,
          Key::sterilizerNotInService,
          Key::sterilizerHeld,
          Key::airRemovalFailed,
          Key::airRemovalNoneMade,
          Key::physicalBelow,
          Key::physicalLost,
          Key::traceExposureShort,
          Key::pcdRejected,
          Key::pcdLost,
          Key::implantBiPositive,
          Key::implantIndicatorRejected,
          Key::implantImpossible,
          Key::biPositive,
          Key::packagesAllUnchanged,
          Key::immediateNotSteam,
          Key::immediateForStorage,
          Key::reviewNotIsolated,
          Key::itemExternalAbsent,
          Key::itemExternalRejected,
          Key::itemExternalLost,
          Key::itemWet,
          Key::itemTorn,
          Key::itemUnsealed,
          Key::itemCheckLost,
          Key::itemInternalAbsent,
          Key::itemInternalRejected,
          Key::itemInternalLost,
          Key::itemCycleNotAllowed,
          Key::itemPeroxideUnsuitable,
          Key::itemInTest},
         {fails}},
        {{Key::scopeOtherType, Key::scopeNoHistory, Key::physicalNotJudged, Key::pcdNoneRecorded,
          Key::verificationByOperator, Key::reviewNotCounted, Key::voidingBadAnswer,
          Key::voidingNotCounted, Key::actRecordedLate, Key::printoutConfirmed,
          Key::pcdInvalidNoted, Key::itemInternalLostNoted, Key::itemInternalOnOpening,
          Key::itemCycleExtended, Key::testReadLate, Key::testNoWarmUp},
         {note}},
        {{Key::implantMissing, Key::implantPending, Key::implantIndicatorMissing,
          Key::itemInTwoLoads, Key::biUnclear, Key::biNotRegistered, Key::biNotStarted,
          Key::biIncubating, Key::biNotCounted, Key::biDue, Key::biProcessIndicator, Key::biControl,
          Key::routinePending, Key::routineNone, Key::itemInternalInvalid,
          Key::itemCycleNoneRecorded, Key::traceUnusable},
         {note, waits}},
        {{Key::biVoid, Key::biLost}, {note, review, fails}, Reviewer::lead},
        {{Key::pcdLostNoted, Key::alarmNotListed, Key::sterilizerTakenOutDuring,
          Key::processFailureOpen, Key::airRemovalFailedAfter, Key::physicalDryingShort,
          Key::packagesOneRejected, Key::peroxideItemUnsuitable, Key::traceNotSaturated,
          Key::traceDryingShort},
         {review},
         Reviewer::lead},
        {{Key::airRemovalMadeAfter, Key::physicalAbove, Key::traceInterrupted, Key::traceBelow,
          Key::traceAbove},
         {review, fails},
         Reviewer::lead},
        {{Key::traceNotShown}, {note, review}, Reviewer::lead},
        {{Key::sterilizerHoldNotKnown, Key::scopeInPositive, Key::airRemovalPutRightLate,
          Key::packagesSeveralRejected, Key::packagesWet},
         {review},
         Reviewer::supervisor},
        {{Key::biPositiveElsewhere}, {review}, Reviewer::secondSupervisor},
        // A test has no verdict: void and pending may be said as either.
        {{Key::testItemsInside,
          Key::testNotEnded,
          Key::testTimes,
          Key::testAborted,
          Key::testNotSteam,
          Key::testSheetFailed,
          Key::testSheetLost,
          Key::testSheetSpoiled,
          Key::testChamberNotEmpty,
          Key::testOutsideDirections,
          Key::testDryingRun,
          Key::testNotRead,
          Key::testUnclear,
          Key::testExposureUnknown,
          Key::testDirectionsMissing,
          Key::testLeakImplausible,
          Key::testLeakTooHigh,
          Key::testLeakTooShort,
          Key::testPhysicalFailed,
          Key::testIndicatorRejected,
          Key::testBiPositive,
          Key::testBiVoid,
          Key::testPhysicalMissing,
          Key::testIndicatorPending,
          Key::testBiPending},
         {waits, fails}},
    };
    return rows;
}

/// Every key with every outcome that it can take.
std::vector<Saying> sayings()
{
    std::vector<Saying> all;
    for (const Row& row : rows()) {
        for (const Key key : row.keys) {
            for (const Outcome outcome : row.outcomes) {
                const bool isReview = outcome == Outcome::review;
                all.push_back({key, outcome, isReview ? row.reviewer : Reviewer::none, false});
                if (isReview) {
                    all.push_back({key, Outcome::note, row.reviewer, true});
                }
            }
        }
    }
    return all;
}

Finding findingOf(const Saying& saying)
{
    Finding finding;
    finding.key = saying.key;
    finding.outcome = saying.outcome;
    finding.reviewer = saying.reviewer;
    finding.reviewed = saying.reviewed;
    return finding;
}

Finding fullFindingOf(const Saying& saying, const std::string& subject)
{
    Finding finding = findingOf(saying);
    finding.subject = subject;
    finding.changesAt = parseInstant("2031-03-04T07:14:00Z");
    finding.value = Quantity{Unit::celsius, 131'900};
    finding.limit = Quantity{Unit::celsius, 132'000};
    finding.count = 3;
    return finding;
}

void expectWellSaid(const Finding& finding)
{
    const Said said = say(finding, HouseStyle{});
    EXPECT_TRUE(isSentence(said.says)) << said.says;
    EXPECT_TRUE(said.next.empty() || isSentence(said.next)) << said.next;
    if (finding.outcome != Outcome::note) {
        EXPECT_FALSE(said.next.empty());
    }
    EXPECT_FALSE(said.source.empty());
    EXPECT_FALSE(hasMarker(said.source)) << said.source;
    if (finding.outcome == Outcome::review) {
        EXPECT_THAT(said.says, testing::HasSubstr("must review it."));
    }
    if (finding.reviewed) {
        EXPECT_THAT(said.says, testing::HasSubstr("reviewed it: this load is not affected."));
        EXPECT_EQ(said.next, "");
    }
}

} // namespace

TEST(Keys, EveryKeyIsInTheTableOnce)
{
    std::set<Key> seen;
    for (const Row& row : rows()) {
        for (const Key key : row.keys) {
            EXPECT_TRUE(seen.insert(key).second) << nameOf(key);
        }
    }
    EXPECT_EQ(seen.size(), static_cast<std::size_t>(keyCount));
}

TEST(Keys, EveryKeyHasWordsForEachOutcomeWithAndWithoutDetails)
{
    for (const Saying& saying : sayings()) {
        SCOPED_TRACE(nameOf(saying.key) + " " + say(saying.outcome));
        expectWellSaid(findingOf(saying));
        expectWellSaid(fullFindingOf(saying, "S-1"));
    }
}

TEST(Keys, SubjectsWithPlaceMarkersStandAsTheyAre)
{
    const std::string hostile = "%1 %2 %3 %L1 <b>";
    for (const Saying& saying : sayings()) {
        SCOPED_TRACE(nameOf(saying.key));
        Finding finding = fullFindingOf(saying, "S-1");
        const Said plain = say(finding, HouseStyle{});
        finding.subject = hostile;
        const Said said = say(finding, HouseStyle{});
        const auto replaced = [&hostile](std::string text) {
            for (std::size_t at = text.find(hostile); at != std::string::npos;
                 at = text.find(hostile)) {
                text.replace(at, hostile.size(), "S-1");
            }
            return text;
        };
        EXPECT_EQ(replaced(said.says), plain.says);
        EXPECT_EQ(replaced(said.next), plain.next);
    }
}

TEST(Keys, SubjectsThatRulesDefineAreSaidInWords)
{
    struct Case {
        Key key;
        const char* subject;
        const char* words;
    };
    const Case cases[] = {
        {Key::recordMissing, "sterilizer", "which sterilizer"},
        {Key::recordMissing, "specification", "cycle specification"},
        {Key::recordMissing, "lot", "lot number"},
        {Key::recordMissing, "start", "start of the cycle"},
        {Key::recordMissing, "end", "end of the cycle"},
        {Key::recordMissing, "operator", "who ran the load"},
        {Key::recordMissing, "items", "No item"},
        {Key::printoutIncomplete, "program", "compared by program"},
        {Key::printoutIncomplete, "sterilizer", "compared by sterilizer"},
        {Key::printoutIncomplete, "counter", "compared by cycle counter"},
        {Key::printoutIncomplete, "start", "start of the cycle"},
        {Key::printoutIncomplete, "end", "end of the cycle"},
        {Key::printoutDiffers, "program", "another program"},
        {Key::printoutDiffers, "sterilizer", "another sterilizer"},
        {Key::printoutDiffers, "counter", "different cycle counters"},
        {Key::printoutDiffers, "start", "start of the cycle"},
        {Key::printoutDiffers, "end", "end of the cycle"},
        {Key::physicalMissing, "temperature", ": temperature."},
        {Key::physicalMissing, "exposure", ": exposure time."},
        {Key::physicalMissing, "pressure", ": pressure."},
        {Key::physicalMissing, "drying", ": drying time."},
        {Key::physicalMissing, "concentration", ": gas concentration."},
        {Key::physicalMissing, "humidity", ": humidity."},
        {Key::traceDiffers, "temperature", ": temperature."},
        {Key::traceDiffers, "exposure", ": exposure time."},
        {Key::traceDiffers, "drying", ": drying time."},
        {Key::sterilizerNotInService, "out-of-service", "out of service"},
        {Key::sterilizerNotInService, "qualification", "in qualification"},
        {Key::sterilizerHeld, "held", "was on hold."},
        {Key::sterilizerHeld, "L-7", "lot L-7 had failed"},
        {Key::sterilizerHoldNotKnown, "held", "on hold from a time before"},
        {Key::sterilizerHoldNotKnown, "L-7", "Lot L-7"},
        {Key::sterilizerTakenOutDuring, "out-of-service", "taken out of service"},
        {Key::sterilizerTakenOutDuring, "qualification", "put into qualification"},
        {Key::sterilizerTakenOutDuring, "held", "put on hold"},
    };
    for (const Case& c : cases) {
        Finding finding;
        finding.key = c.key;
        finding.subject = c.subject;
        const Said said = say(finding, HouseStyle{});
        EXPECT_THAT(said.says, testing::HasSubstr(c.words)) << c.subject;
        EXPECT_TRUE(isSentence(said.says) && isSentence(said.next)) << said.says;
    }
}

TEST(Keys, SourcesNameADocumentOrSayThatThereIsNone)
{
    for (int i = 0; i < keyCount; ++i) {
        const std::string source = sourceOf(static_cast<Key>(i));
        EXPECT_THAT(source, testing::AnyOf(testing::HasSubstr("common practice, no source"),
                                           testing::HasSubstr("CFR"), testing::HasSubstr("CDC"),
                                           testing::HasSubstr("AAMI"), testing::HasSubstr("HTM"),
                                           testing::HasSubstr("APIC"), testing::HasSubstr("FDA"),
                                           testing::HasSubstr("Joint Commission"),
                                           testing::HasSubstr("training texts (restated)"),
                                           testing::HasSubstr("training texts:")))
            << nameOf(static_cast<Key>(i));
    }
}

} // namespace loadwarden
