// Questions find their topic: as typed by people, with typing errors, in other words.

#include "core/guidance/topic_search.h"
#include "guidance_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <iostream>
#include <random>

namespace loadwarden {
namespace {

using namespace testing;
using ::testing::IsEmpty;
using ::testing::Not;

const TopicSearch& search()
{
    static const TopicSearch made(shippedTopics(), "en");
    return made;
}

std::string firstOf(std::string_view question)
{
    const FoundTopics found = search().find(question, 1);
    return found.topics.empty() ? "" : found.topics[0].topic->id;
}

std::size_t rankOf(const std::string& id, const FoundTopics& found)
{
    for (std::size_t i = 0; i < found.topics.size(); ++i) {
        if (found.topics[i].topic->id == id) {
            return i + 1;
        }
    }
    return 0;
}

/// The questions by which the search was built: they guard against getting worse, no more.
TEST(Search, FindsTheQuestionsThatItWasBuiltBy)
{
    int first = 0;
    int amongThree = 0;
    int all = 0;
    int sure = 0;
    for (const AskedQuestion& asked : questionsOf("tests/data/guidance/questions_dev.tsv")) {
        const FoundTopics found = search().find(asked.question, 3);
        if (asked.topic == "-") {
            EXPECT_FALSE(found.isSure) << asked.question << " → " << found.topics.front().topic->id
                                       << " " << found.topics.front().score;
            continue;
        }
        ++all;
        const std::size_t rank = rankOf(asked.topic, found);
        first += rank == 1 ? 1 : 0;
        amongThree += rank != 0 ? 1 : 0;
        sure += found.isSure ? 1 : 0;
        if (rank != 1) {
            std::cout << asked.topic << " is " << (rank == 0 ? "not found" : "not first") << ": "
                      << asked.question << " → "
                      << (found.topics.empty() ? "" : found.topics[0].topic->id) << '\n';
        }
    }
    std::cout << first << " first, " << amongThree << " among three, " << sure << " sure, of "
              << all << '\n';
    EXPECT_GE(all, 60);
    EXPECT_GE(first * 10, all * 9);
    EXPECT_GE(amongThree * 20, all * 19);
}

TEST(Search, KnowsFormsOfWords)
{
    EXPECT_EQ(firstOf("packages dropping"), firstOf("a package was dropped"));
    EXPECT_EQ(firstOf("weighing trays"), firstOf("weigh a tray"));
    EXPECT_EQ(firstOf("maker's expired indicators"), "indicator-expired");
}

TEST(Search, KnowsTheWordsOfTheTrade)
{
    EXPECT_EQ(firstOf("iuss for convenience"), "immediate-use");
    EXPECT_EQ(firstOf("flash for convenience"), "immediate-use");
    EXPECT_EQ(firstOf("how many hours of EtO aeration"), "ethylene-oxide-aeration");
    EXPECT_EQ(firstOf("gas needs how many hours of aerating"), "ethylene-oxide-aeration");
    EXPECT_EQ(firstOf("cotton in H2O2"), "hydrogen-peroxide-cellulose");
    EXPECT_EQ(firstOf("H₂O₂ and cotton"), "hydrogen-peroxide-cellulose");
}

TEST(Search, CapitalsStopsAndAccentsDoNotMatter)
{
    EXPECT_EQ(firstOf("WET PACKS!!!"), "wet-packs");
    EXPECT_EQ(firstOf("  wét   packs?"), "wet-packs");
}

TEST(Search, SaysSoWhereNothingFits)
{
    EXPECT_THAT(search().find("", 3).topics, IsEmpty());
    EXPECT_THAT(search().find("?!", 3).topics, IsEmpty());
    EXPECT_THAT(search().find("what is it", 3).topics, IsEmpty());
    EXPECT_FALSE(search().find("xylophone", 3).isSure);
    EXPECT_FALSE(search().find("when does the cafeteria open on sundays", 3).isSure);
}

TEST(Search, TakesAnyBytes)
{
    std::mt19937 random(7);
    for (int i = 0; i < 200; ++i) {
        std::string bytes(random() % 80, ' ');
        for (char& byte : bytes) {
            byte = static_cast<char>(random());
        }
        (void)search().find(bytes, 3);
    }
}

TEST(Search, AnswersTheSameEachTimeAndNoMoreThanAsked)
{
    const FoundTopics once = search().find("wet indicator in a pouch", 5);
    const FoundTopics again = search().find("wet indicator in a pouch", 5);
    ASSERT_EQ(once.topics.size(), 5U);
    for (std::size_t i = 0; i < 5; ++i) {
        EXPECT_EQ(once.topics[i].topic, again.topics[i].topic);
        EXPECT_TRUE(i == 0 || once.topics[i - 1].score >= once.topics[i].score);
    }
}

/// One letter of a word of at least four put in, left out, replaced, or exchanged with the next.
std::string mistyped(std::string text, std::mt19937& random)
{
    std::vector<std::size_t> places; // inside such words
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        if (at < text.size() && std::isalpha(static_cast<unsigned char>(text[at])) != 0) {
            continue;
        }
        for (std::size_t i = begin; at - begin >= 4 && i < at; ++i) {
            places.push_back(i);
        }
        begin = at + 1;
    }
    if (places.empty()) {
        return text;
    }
    const std::size_t at = places[random() % places.size()];
    const char letter = static_cast<char>('a' + random() % 26);
    switch (random() % 4) {
    case 0: text.insert(at, 1, letter); break;
    case 1: text.erase(at, 1); break;
    case 2: text[at] = letter; break;
    default:
        if (at + 1 < text.size() && std::isalpha(static_cast<unsigned char>(text[at + 1])) != 0) {
            std::swap(text[at], text[at + 1]);
        }
    }
    return text;
}

TEST(Search, OneWrongLetterKeepsTheTopicAmongTheFirstThree)
{
    std::mt19937 random(20310304);
    int asked = 0;
    for (const Topic* topic : shippedTopics().topics("en")) {
        std::vector<std::string> phrasings = topic->alsoAsked;
        phrasings.push_back(topic->question);
        for (const std::string& phrasing : phrasings) {
            for (int i = 0; i < 3; ++i) {
                const std::string typed = mistyped(phrasing, random);
                const FoundTopics found = search().find(typed, 3);
                EXPECT_NE(rankOf(topic->id, found), 0U) << topic->id << ": " << typed;
                ++asked;
            }
        }
    }
    EXPECT_GT(asked, 1500);
}

} // namespace
} // namespace loadwarden
