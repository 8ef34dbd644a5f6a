// How indicators are read, in words.
#include "core/words/say_reading.h"
#include "tests/core/words/well_said.h"

#include <gtest/gtest.h>

#include <set>

namespace loadwarden {
namespace {

using test_words::isSentence;

TEST(ReadingRules, AreSentencesWithASource)
{
    std::set<std::string> all;
    for (const ReadingRule rule : everyReadingRule) {
        const ReadingSaid said = say(rule);
        EXPECT_TRUE(isSentence(said.says)) << said.says;
        EXPECT_FALSE(said.source.empty()) << said.says;
        EXPECT_TRUE(all.insert(said.says).second) << said.says;
    }
}

TEST(ReadingRules, BeginWithTheAnswerThatTheyAskFor)
{
    const std::set<ReadingRule> accepting = {
        ReadingRule::frontEntered, ReadingRule::endColourReached, ReadingRule::uniformComplete};
    for (const ReadingRule rule : everyReadingRule) {
        const std::string begin = accepting.contains(rule)       ? "Accept:"
                                  : rule == ReadingRule::unclear ? "Unclear:"
                                                                 : "Reject:";
        EXPECT_TRUE(say(rule).says.starts_with(begin)) << say(rule).says;
    }
}

TEST(ReadingRules, SayThatAFrontNeedNotFillItsZone)
{
    EXPECT_NE(say(ReadingRule::frontEntered).says.find("it need not fill it"), std::string::npos);
}

TEST(PatternsOfASheet, HaveEachANameAndASuggestionWithItsSource)
{
    std::set<std::string> names;
    for (const SheetPattern pattern : everySheetPattern) {
        EXPECT_TRUE(names.insert(say(pattern)).second);
        EXPECT_FALSE(say(pattern).empty());
        EXPECT_TRUE(isSentence(suggestionOf(pattern).says)) << suggestionOf(pattern).says;
        EXPECT_FALSE(suggestionOf(pattern).source.empty());
    }
}

TEST(TypesOfIndicators, SayWhatTheyCanTellAndWhatNot)
{
    std::set<std::string> names;
    for (const int type : {0, 1, 2, 3, 4, 5, 6}) {
        const TypeSaid said = sayType(type);
        EXPECT_TRUE(names.insert(said.name).second) << type;
        EXPECT_TRUE(isSentence(said.can)) << said.can;
        EXPECT_TRUE(isSentence(said.cannot)) << said.cannot;
        EXPECT_FALSE(said.source.empty()) << type;
    }
    EXPECT_EQ(sayType(7).name, sayType(0).name);
    EXPECT_EQ(sayType(-1).name, sayType(0).name);
}

} // namespace
} // namespace loadwarden
