#include "core/words/say_act.h"
#include "core/words/say_refusal.h"
#include "tests/core/words/well_said.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <set>
#include <string>

namespace loadwarden {

namespace {

using test_words::hasMarker;
using test_words::isSentence;

// Every refusal there is, with what its sentences may need; a new one is seen by the compiler in
// say_refusal.cpp and by this count.
constexpr int refusals = static_cast<int>(RefusalWhy::lotOfOwnLoad) + 1;

Refusal fullRefusal(RefusalWhy why)
{
    return {.why = why,
            .subject = "SUBJECT",
            .detail = "must be something",
            .task = Task::amend,
            .until = Instant{1'930'000'000'000},
            .verdict = Verdict::quarantine,
            .seq = 17,
            .since = {{.seq = 18,
                       .kind = "chemical.read",
                       .thing = "ci-7",
                       .value = "unchanged",
                       .by = "A PERSON",
                       .at = Instant{1'930'000'000'000}},
                      {.seq = 19, .kind = "entry.voided", .by = "", .at = {}}},
            .place = ProductPlace::vial,
            .findings = {{.key = Key::itemWet, .outcome = Outcome::fails, .subject = "TRAY"}}};
}

TEST(SayRefusal, EachHasTwoSentencesOfItsOwn)
{
    std::set<std::string> said;
    for (int i = 0; i < refusals; ++i) {
        const Told told = say(fullRefusal(static_cast<RefusalWhy>(i)), {});
        EXPECT_TRUE(isSentence(told.says)) << i << ' ' << told.says;
        EXPECT_TRUE(isSentence(told.next)) << i << ' ' << told.next;
        EXPECT_FALSE(hasMarker(told.says)) << told.says;
        EXPECT_FALSE(hasMarker(told.next)) << told.next;
        EXPECT_TRUE(said.insert(told.says).second) << told.says;
    }
}

TEST(SayRefusal, NamesWhatItIsAbout)
{
    const std::string stale = say(fullRefusal(RefusalWhy::stale), {}).says;
    for (const char* const word :
         {"reading of a chemical indicator of ci-7: unchanged (by A PERSON, "
          "27 Feb 2031",
          "entry 18", "voiding of an entry (by the program", "entry 19"}) {
        EXPECT_THAT(stale, ::testing::HasSubstr(word));
    }
    EXPECT_THAT(say(fullRefusal(RefusalWhy::wrongProduct), {}).says,
                ::testing::HasSubstr("a biological indicator"));
    EXPECT_THAT(say(fullRefusal(RefusalWhy::notOnlyTheVial), {}).says, ::testing::HasSubstr("wet"));
    EXPECT_THAT(say(fullRefusal(RefusalWhy::notReleasable), {}).says,
                ::testing::HasSubstr("Quarantine"));
    EXPECT_THAT(say(fullRefusal(RefusalWhy::notCurrent), {}).says, ::testing::HasSubstr("17"));
}

TEST(SayAct, EveryKindHasWordsOfItsOwn)
{
    std::set<std::string> said;
#define LW_ACT(Struct, kind, version, paper, subjects)                                             \
    EXPECT_TRUE(said.insert(sayKind(kind)).second && !sayKind(kind).empty()) << kind;
#include "core/acts/acts.def"
#undef LW_ACT
    EXPECT_EQ(sayKind("cycle.rested"), "cycle.rested");
}

TEST(SayAct, AUseWithoutAReleaseSaysWhatToDo)
{
    const Told told = say(UnreleasedUse{
        .item = "it-1", .label = "TRAY 7", .lot = "L 1", .caseReference = "case 9", .seq = 3});
    EXPECT_TRUE(isSentence(told.says)) << told.says;
    EXPECT_TRUE(isSentence(told.next)) << told.next;
    for (const char* const word : {"TRAY 7", "L 1", "case 9", "nobody had released"}) {
        EXPECT_THAT(told.says, ::testing::HasSubstr(word));
    }
    EXPECT_THAT(told.next, ::testing::HasSubstr("supervisor"));
}

TEST(SayRefusal, AWaitIsSaidUpToAMinuteLateNeverEarly)
{
    Refusal refusal = fullRefusal(RefusalWhy::pinWait);
    refusal.until = *parseInstant("2031-03-04T07:14:01Z");
    EXPECT_THAT(say(refusal, {}).says, ::testing::HasSubstr("07:15"));
    refusal.until = *parseInstant("2031-03-04T07:14:00Z");
    EXPECT_THAT(say(refusal, {}).says, ::testing::HasSubstr("07:14"));
}

} // namespace

} // namespace loadwarden
