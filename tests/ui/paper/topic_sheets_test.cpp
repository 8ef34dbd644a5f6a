// Cards and teaching sheets of every topic of the program, read back.

#include "core/exchange/policy_reader.h"
#include "core/words/say.h"
#include "tests/ui/paper/read_back.h"
#include "ui/paper/sheets/answer_card.h"
#include "ui/paper/sheets/in_service_sheet.h"

#include <gmock/gmock.h>

#include <cstdlib>

namespace loadwarden::testing {
namespace {

using paper::answerCard;
using paper::House;
using paper::inServiceSheet;
using paper::Pages;
using paper::PageSize;
using ::testing::HasSubstr;
using ::testing::Not;

const TopicLibrary& topics()
{
    static const TopicLibrary library = TopicLibrary::builtIn();
    return library;
}

const Date printed = *parseDate("2031-03-04");

TopicAnswer answered(const Topic& topic, const TopicLibrary& library = topics(),
                     Date today = printed)
{
    return answerTopic(library, topic, defaultPolicy(), today);
}

/// A facility's topic that reads well, with a text of its own.
std::string houseTopic(const std::string& why)
{
    return "topic_version = 1\nid = \"house-key\"\nquestion = \"Where is the key?\"\n"
           "also_asked = [\"Who has the key?\", \"Key of the cupboard\"]\n"
           "short_answer = \"In the cupboard.\"\ndo_now = [\"Ask at the desk.\"]\nwhy = \""
           + why
           + "\"\ncaution = \"None but the usual.\"\nowner = \"the desk\"\n"
             "review_by = 2030-01-02\nrelated = [\"wet-packs\"]\n\n[[source]]\n"
             "text = \"common practice, no source\"\nconfidence = \"common-practice\"\n";
}

class TopicSheets : public ::testing::TestWithParam<PageSize> {
protected:
    [[nodiscard]] static House house()
    {
        return {.style = {}, .facility = "Facility", .journal = {}, .size = GetParam()};
    }

    static void expectAll(const std::string& paper, const std::vector<std::string>& words)
    {
        for (const std::string& word : words) {
            EXPECT_THAT(paper, HasSubstr(squeezed(word)));
        }
    }

    /// What both sheets have of a topic.
    static void expectTopic(const std::string& paper, const TopicAnswer& answer)
    {
        const Topic& topic = *answer.topic;
        expectAll(paper, topic.doNow);
        expectAll(paper, {topic.question, topic.shortAnswer, topic.why, topic.caution, topic.owner,
                          formatDate(topic.reviewBy), "Facility", "Loadwarden", topic.id,
                          "Printed 2031-03-04", caution()});
        for (const TopicSource& source : topic.sources) {
            expectAll(paper, {source.text});
        }
        EXPECT_EQ(answer.cases.empty(),
                  paper.find(squeezed("Decided by the program's rule on a small evidence"))
                      == std::string::npos);
        for (const CaseAnswer& each : answer.cases) {
            std::string decided = std::visit([](auto one) { return say(one); }, decidedOn(each));
            decided.front() = static_cast<char>(std::toupper(decided.front()));
            expectAll(paper, {decided + each.topicCase->tells});
        }
    }

    static void expectInside(const Pages& pages)
    {
        EXPECT_EQ(pages.size(), GetParam());
        for (int page = 0; page < pages.count(); ++page) {
            EXPECT_FALSE(hasInkOutside(pictureOf(pages, page), GetParam())) << page;
        }
    }
};

TEST_P(TopicSheets, EveryTopicFitsOnOneCardWithAllItsFields)
{
    ASSERT_FALSE(topics().topics("en").empty());
    int drawn = 0;
    for (const Topic* const topic : topics().topics("en")) {
        SCOPED_TRACE(topic->id);
        const TopicAnswer answer = answered(*topic);
        const Pages card = answerCard(answer, house(), printed);
        const std::vector<std::string> pages = textOfPages(card);
        ASSERT_EQ(pages.size(), 1U);
        expectTopic(pages[0], answer);
        expectInside(card);
        const bool hasWords = pages[0].find("acceptzone") != std::string::npos
                              || pages[0].find("apalepatchanywhere:reject") != std::string::npos
                              || pages[0].find("endcolour:accept") != std::string::npos;
        drawn += topic->picture != TopicPicture::none ? 1 : 0;
        if (topic->picture != TopicPicture::none) {
            EXPECT_TRUE(hasWords);
        }
    }
    EXPECT_GT(drawn, 0);
}

TEST_P(TopicSheets, EveryTopicIsTaughtFromTwoPagesAtMost)
{
    for (const Topic* const topic : topics().topics("en")) {
        SCOPED_TRACE(topic->id);
        const TopicAnswer answer = answered(*topic);
        const Pages sheet = inServiceSheet(answer, topics(), house(), printed);
        EXPECT_LE(sheet.count(), 2);
        const std::string paper = textOf(sheet);
        expectTopic(paper, answer);
        expectAll(paper, {topic->alsoAsked[0], topic->alsoAsked[1], "What is often believed?",
                          "Who attended", "Taught by", "Name", "Signature", "Date"});
        const std::size_t shown = std::min<std::size_t>(3, topic->related.size());
        for (std::size_t i = 0; i < shown; ++i) {
            const Topic* const other = topics().find(topic->related[i], "en");
            expectAll(paper, {other->question, other->shortAnswer});
        }
        for (const CaseAnswer& each : answer.cases) {
            for (const Finding& finding : each.findings) {
                expectAll(paper, {say(finding, HouseStyle{.zone = each.zone}).says});
            }
        }
        expectInside(sheet);
    }
}

TEST_P(TopicSheets, TheSheetOfAFrontTellsWhereItIsAccepted)
{
    const auto cardOf = [](const char* id) {
        return textOf(answerCard(answered(*topics().find(id, "en")), house(), printed));
    };
    const std::string entered = cardOf("front-in-accept-zone");
    expectAll(entered, {"the front, past the boundary: accept", "short of the boundary: reject"});
    const std::string onLine = cardOf("front-on-boundary");
    expectAll(onLine,
              {"the front, on the boundary: reject", "the front, short of the boundary: reject"});
    EXPECT_THAT(onLine, Not(HasSubstr(squeezed("past the boundary: accept"))));
}

TEST_P(TopicSheets, WhereThePolicyDecidesOtherwiseThePaperSaysSo)
{
    TopicAnswer answer = answered(*topics().find("front-on-boundary", "en"));
    const std::string word = squeezed("The policy decides otherwise than this answer says");
    EXPECT_THAT(textOf(answerCard(answer, house(), printed)), Not(HasSubstr(word)));
    answer.policyDiffers = true;
    EXPECT_THAT(textOf(answerCard(answer, house(), printed)), HasSubstr(word));
    EXPECT_THAT(textOf(inServiceSheet(answer, topics(), house(), printed)), HasSubstr(word));
}

TEST_P(TopicSheets, WhatTheHouseAddsIsThereWithItsOwnerAndAReviewThatIsOver)
{
    TopicLibrary library = topics();
    ASSERT_TRUE(library
                    .add({{"en/wet-packs.note.toml", "note",
                           "note_version = 1\ntopic = \"wet-packs\"\nnote = \"Call the lead.\"\n"
                           "owner = \"lead of sterilization\"\nreview_by = 2031-03-03\n"},
                          {"en/house-key.toml", "topic", houseTopic("It is the house's own.")}},
                         true)
                    .empty());
    for (const bool isCard : {true, false}) {
        const auto paperOf = [&](const char* id) {
            const TopicAnswer answer = answered(*library.find(id, "en"), library);
            return textOf(isCard ? answerCard(answer, house(), printed)
                                 : inServiceSheet(answer, library, house(), printed));
        };
        expectAll(paperOf("wet-packs"),
                  {"This house adds", "Call the lead.", "lead of sterilization",
                   "2031-03-03, which is over: ask the owner whether this still holds"});
        expectAll(paperOf("house-key"), {"from the facility's own topic house-key", "the desk"});
    }
}

TEST_P(TopicSheets, ALongTopicOfAFacilityLosesNothing)
{
    std::string why;
    for (int i = 0; why.size() < 1'900; ++i) {
        why += "Word" + std::to_string(i) + " ";
    }
    const auto fitted = [&](const std::string& text) {
        TopicLibrary library = topics();
        EXPECT_TRUE(library.add({{"en/house-key.toml", "topic", text}}, true).empty());
        return textOfPages(
            answerCard(answered(*library.find("house-key", "en"), library), house(), printed));
    };
    const std::vector<std::string> one = fitted(houseTopic(why));
    ASSERT_EQ(one.size(), 1U);
    EXPECT_THAT(one[0], HasSubstr(squeezed(why)));
    std::string steps;
    for (int i = 0; i < 12; ++i) {
        steps += (i == 0 ? "\"" : ", \"") + why.substr(0, 480) + std::to_string(i) + "\"";
    }
    std::string longest = houseTopic(why);
    longest.replace(longest.find("\"Ask at the desk.\""), 18, steps);
    std::string all;
    for (const std::string& page : fitted(longest)) {
        all += page;
    }
    for (int i = 0; i < 12; ++i) {
        EXPECT_THAT(all, HasSubstr(squeezed(why.substr(0, 480) + std::to_string(i))));
    }
    expectAll(all, {why, "None but the usual.", "the desk"});
}

INSTANTIATE_TEST_SUITE_P(Sizes, TopicSheets, ::testing::Values(PageSize::letter, PageSize::a4),
                         [](const auto& tried) {
                             return tried.param == PageSize::letter ? "Letter" : "A4";
                         });

} // namespace
} // namespace loadwarden::testing
