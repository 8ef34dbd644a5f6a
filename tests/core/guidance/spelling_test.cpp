#include "core/guidance/spelling.h"
#include "core/guidance/text_words.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using ::testing::ElementsAre;
using ::testing::IsEmpty;

TEST(Edits, ArePublishedDistances)
{
    // V. Levenshtein's distance, textbook examples; memory.
    EXPECT_EQ(editsBetween("kitten", "sitting", 9), 3U);
    EXPECT_EQ(editsBetween("saturday", "sunday", 9), 3U);
    EXPECT_EQ(editsBetween("", "abc", 9), 3U);
    EXPECT_EQ(editsBetween("same", "same", 9), 0U);
    // Neighbours exchanged are one edit; optimal string alignment edits no letter twice, so that
    // this pair is 3 and not 2 (Boytsov 2011; memory).
    EXPECT_EQ(editsBetween("ca", "ac", 9), 1U);
    EXPECT_EQ(editsBetween("ca", "abc", 9), 3U);
}

TEST(Edits, StopEarlyOnlyAboveTheirBound)
{
    for (const char* other : {"steam", "stem", "tsaem", "cream", "sterilizer", ""}) {
        const std::size_t edits = editsBetween("steam", other, 99);
        for (std::size_t most = 0; most < 8; ++most) {
            const std::size_t bounded = editsBetween("steam", other, most);
            EXPECT_EQ(bounded <= most, edits <= most) << other << " " << most;
            EXPECT_TRUE(bounded > most || bounded == edits);
        }
    }
}

TEST(Edits, TakeWordsOfAnyLength)
{
    const std::string longWord(500, 'a');
    EXPECT_EQ(editsBetween(longWord, longWord, 2), 0U);
    EXPECT_GT(editsBetween(longWord, "b", 2), 2U);
}

TEST(Spelling, FindsTheNearestWords)
{
    Spelling spelling;
    for (const char* word : {"indicator", "incubator", "vial", "dial", "autoclave", "wrap"}) {
        spelling.learn(word);
    }
    EXPECT_THAT(spelling.nearest("indicater", 3), ElementsAre("indicator"));
    EXPECT_THAT(spelling.nearest("autcolave", 3), ElementsAre("autoclave"));
    EXPECT_THAT(spelling.nearest("vail", 3), ElementsAre("vial"));
    EXPECT_THAT(spelling.nearest("bial", 3), ElementsAre("dial", "vial"));
    EXPECT_THAT(spelling.nearest("bial", 1), ElementsAre("dial"));
    EXPECT_THAT(spelling.nearest("via", 3), ElementsAre("vial"));
    EXPECT_THAT(spelling.nearest("vil", 3), ElementsAre("vial"));
    EXPECT_THAT(spelling.nearest("vi", 3), IsEmpty()); // too short to guess
    EXPECT_THAT(spelling.nearest("xylophone", 3), IsEmpty());
    EXPECT_THAT(spelling.nearest("", 3), IsEmpty());
}

TEST(Words, AreCutAndFolded)
{
    EXPECT_THAT(wordsOf("The maker's 10⁶ spores DON'T grow (H₂O₂)…"),
                ElementsAre("the", "maker", "106", "spores", "dont", "grow", "h2o2"));
    EXPECT_THAT(wordsOf("Bowie-Dick: Tür, naïve"), ElementsAre("bowie", "dick", "tur", "naive"));
    EXPECT_THAT(wordsOf("?! – "), IsEmpty());
    EXPECT_THAT(singularWordsOf("trays glass pus bi's"), ElementsAre("tray", "glass", "pus", "bi"));
}

TEST(Words, HaveStems)
{
    // Snowball's own examples for English: https://snowballstem.org/algorithms/english/stemmer.html
    // (memory)
    const Stemmer english("en");
    EXPECT_EQ(english.stemOf("consistency"), "consist");
    EXPECT_EQ(english.stemOf("consistently"), "consist");
    EXPECT_EQ(english.stemOf("knitting"), "knit");
    const Stemmer unknown("xx");
    EXPECT_EQ(unknown.stemOf("knitting"), "knitting");
}

} // namespace
} // namespace loadwarden
