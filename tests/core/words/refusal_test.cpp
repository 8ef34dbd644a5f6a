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
            .since = {18, 19}};
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
    EXPECT_THAT(say(fullRefusal(RefusalWhy::stale), {}).says, ::testing::HasSubstr("18, 19"));
    EXPECT_THAT(say(fullRefusal(RefusalWhy::notReleasable), {}).says,
                ::testing::HasSubstr("Quarantine"));
    EXPECT_THAT(say(fullRefusal(RefusalWhy::notCurrent), {}).says, ::testing::HasSubstr("17"));
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
