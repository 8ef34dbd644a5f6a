// The topics that the program brings along: every one reads, has its source, says what the rules
// decide, and is found by its own words.

#include "core/exchange/evidence_reader.h"
#include "core/exchange/policy_reader.h"
#include "core/exchange/specification_library.h"
#include "core/guidance/answer.h"
#include "core/guidance/topic_search.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"
#include "guidance_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace loadwarden {
namespace {

using namespace testing;
using ::testing::AnyOf;
using ::testing::IsEmpty;
using ::testing::StartsWith;

std::vector<const Topic*> topics()
{
    return shippedTopics().topics("en");
}

TEST(Topics, AllReadAndAreThoseBuiltIn)
{
    const TopicLibrary builtIn = TopicLibrary::builtIn();
    EXPECT_EQ(builtIn.topics("en").size(), topics().size());
    EXPECT_GE(topics().size(), 44U);
    for (const Topic* topic : topics()) {
        ASSERT_NE(builtIn.find(topic->id, "en"), nullptr) << topic->id;
        EXPECT_EQ(builtIn.find(topic->id, "en")->shortAnswer, topic->shortAnswer) << topic->id;
        EXPECT_FALSE(topic->isOfFacility);
    }
}

/// The topics that were asked for, each under the id that it has here.
TEST(Topics, CoverWhatIsAskedOnTheFloor)
{
    for (const char* id : {"front-in-accept-zone",
                           "front-on-boundary",
                           "indicator-changed-since",
                           "tape-is-not-proof",
                           "external-indicator-missing",
                           "internal-indicator-missing",
                           "one-indicator-unresponsive",
                           "several-indicators-unresponsive",
                           "integrator-instead-of-bi",
                           "bi-read-early",
                           "control-dead",
                           "vial-not-activated",
                           "positive-bi-at-night",
                           "implant-before-bi",
                           "immediate-use",
                           "after-repair-which-first",
                           "major-repair",
                           "bowie-dick-when",
                           "bowie-dick-how",
                           "bowie-dick-failed",
                           "bowie-dick-forgotten",
                           "wet-packs",
                           "package-dropped",
                           "package-torn",
                           "package-compressed",
                           "shelf-life",
                           "filter-gasket-imprint",
                           "pouch-single-or-double",
                           "pouch-heavy-instrument",
                           "pouch-inner-folded",
                           "pouch-inside-set",
                           "weigh-what-you-pack",
                           "set-weight",
                           "loaned-sets",
                           "sterile-meaning",
                           "extended-cycles",
                           "who-may-release",
                           "ethylene-oxide-aeration",
                           "ethylene-oxide-aborted",
                           "hydrogen-peroxide-cellulose",
                           "power-failure",
                           "rerun-after-abort",
                           "what-to-write-down",
                           "how-long-to-keep"}) {
        EXPECT_NE(shippedTopics().find(id, "en"), nullptr) << id;
    }
}

TEST(Topics, EachHasASourceOrSaysThatThereIsNone)
{
    for (const Topic* topic : topics()) {
        ASSERT_FALSE(topic->sources.empty()) << topic->id;
        for (const TopicSource& source : topic->sources) {
            EXPECT_EQ(source.text == noSource, source.trust == SourceTrust::commonPractice)
                << topic->id << ": " << source.text;
            EXPECT_NE(source.trust, SourceTrust::facility) << topic->id;
        }
    }
}

TEST(Topics, NameNoOwnerThatTheFacilityHasNotNamed)
{
    for (const Topic* topic : topics()) {
        EXPECT_THAT(topic->owner, StartsWith("facility: ")) << topic->id;
    }
}

/// By its own way through reader, assemble and decide, not by answerCase.
TEST(Topics, EveryRuleTopicSaysWhatDecideSays)
{
    const SpecificationLibrary specifications = SpecificationLibrary::builtIn();
    int cases = 0;
    std::set<std::string> rules;
    for (const Topic* topic : topics()) {
        for (const TopicCase& each : topic->cases) {
            SCOPED_TRACE(topic->id + ": " + each.evidence);
            const std::string* text = shippedTopics().evidence(each.evidence);
            ASSERT_NE(text, nullptr);
            auto read = readEvidence(*text, each.evidence, 1, &specifications);
            ASSERT_TRUE(std::holds_alternative<EvidenceRecord>(read));
            auto& record = std::get<EvidenceRecord>(read);
            ASSERT_TRUE(record.decideAt);
            const Instant now = *record.decideAt;
            const Evidence evidence = assemble(std::move(record));
            std::string result;
            std::set<Key> keys;
            if (evidence.record.test) {
                const TestJudgement judged = judgeTest(evidence, defaultPolicy(), now);
                result = textOf(judged.result);
                for (const Finding& finding : judged.findings) {
                    keys.insert(finding.key);
                }
            } else {
                const Decision decided = decide(evidence, defaultPolicy(), now);
                result = textOf(decided.verdict);
                for (const ItemDecision& item : decided.items) {
                    if (item.label == each.item) {
                        result = textOf(item.verdict);
                    }
                }
                for (const Finding& finding : decided.findings) {
                    keys.insert(finding.key);
                }
            }
            EXPECT_EQ(result, each.expected);
            for (const Key key : each.keys) {
                EXPECT_TRUE(keys.contains(key)) << textOf(key);
                EXPECT_EQ(textOf(ruleOf(key)), each.rule);
            }
            // What is not released has a reason that the topic names.
            EXPECT_TRUE(!each.keys.empty() || result == "release" || result == "passed");
            rules.insert(each.rule);
            ++cases;
        }
    }
    EXPECT_GE(cases, 50);
    EXPECT_GE(rules.size(), 18U);
}

TEST(Topics, AnswerHoldsTheDecisionAndTellsWhereAPolicyDecidesOtherwise)
{
    const Topic* topic = shippedTopics().find("bowie-dick-forgotten", "en");
    const Date day = *parseDate("2031-03-04");
    const TopicAnswer byDefault = answerTopic(shippedTopics(), *topic, defaultPolicy(), day);
    ASSERT_EQ(byDefault.cases.size(), 2U);
    EXPECT_EQ(byDefault.cases[1].result, "reprocess");
    ASSERT_EQ(byDefault.cases[1].findings.size(), 1U);
    EXPECT_EQ(byDefault.cases[1].findings[0].key, Key::airRemovalMadeAfter);
    EXPECT_FALSE(byDefault.policyDiffers);
    EXPECT_TRUE(byDefault.isOverdue);

    const std::string text = replaced(
        replaced(std::string(defaultPolicyText()), "id = \"us-hospital\"", "id = \"house\""),
        "[air_removal.made_after]\nvalue = \"fails\"",
        "[air_removal.made_after]\nvalue = \"review\"");
    const auto house = readPolicy(text, "house.toml");
    ASSERT_TRUE(std::holds_alternative<Policy>(house));
    const TopicAnswer byHouse = answerTopic(shippedTopics(), *topic, std::get<Policy>(house), day);
    EXPECT_TRUE(byHouse.policyDiffers);
    EXPECT_EQ(byHouse.cases[1].result, "quarantine");
}

TEST(Topics, EachIsFoundFirstByItsOwnWords)
{
    const TopicSearch search(shippedTopics(), "en");
    for (const Topic* topic : topics()) {
        std::vector<std::string> phrasings = topic->alsoAsked;
        phrasings.push_back(topic->question);
        for (const std::string& phrasing : phrasings) {
            const FoundTopics found = search.find(phrasing, 3);
            ASSERT_THAT(found.topics, Not(IsEmpty())) << phrasing;
            EXPECT_EQ(found.topics[0].topic->id, topic->id) << phrasing;
            EXPECT_TRUE(found.isSure) << phrasing;
        }
    }
}

/// No number of degrees, minutes, hours, days, per cent, weight or pressure that stands in no case,
/// no calculation, no question (people ask with numbers) and in none of the facts listed here.
TEST(Topics, StateOnlyNumbersThatHaveASource)
{
    // CDC Guideline for Disinfection and Sterilization in Healthcare Facilities (2008), Table 7,
    // text on ethylene oxide and sterility assurance; UK Central Sterilising Club handbook 2025;
    // HTM 2010 and EN 285 practice texts (leak); public training texts (Bowie-Dick); AORN and AAMI
    // (25 lb, 11.3 kg); pouch makers' IFU as practised (75 %); FDA guidance on biological
    // indicators 2007 (97 % in 7 days); JADA 122, 1991 (dry heat).
    const std::set<std::string> known = {
        "132 °C", "121 °C",  "134 °C",  "126 °C",   "170 °C", "160 °C",  "150 °C",
        "60 °C",  "4 min",   "30 min",  "15 min",   "10 min", "20 min",  "3 min",
        "60 min", "120 min", "150 min", "5 min",    "12 h",   "25 lb",   "11.3 kg",
        "75 %",   "97 %",    "13 mbar", "1.3 mbar", "7 days", "10 years"};
    const std::vector<std::string> units = {" °C", " min",  " h",    " lb",   " kg",
                                            " %",  " mbar", " days", " years"};
    for (const Topic* topic : topics()) {
        std::string text = topic->shortAnswer + " " + topic->why + " " + topic->caution;
        for (const std::string& step : topic->doNow) {
            text += " " + step;
        }
        std::string asked = topic->question;
        for (const TopicCase& each : topic->cases) {
            asked += " " + each.tells;
        }
        for (const std::string& unit : units) {
            for (std::size_t at = text.find(unit); at != std::string::npos;
                 at = text.find(unit, at + 1)) {
                std::size_t begin = at;
                while (begin > 0
                       && (std::isdigit(static_cast<unsigned char>(text[begin - 1])) != 0
                           || text[begin - 1] == '.')) {
                    --begin;
                }
                const bool isWordEnd =
                    at + unit.size() == text.size()
                    || std::isalpha(static_cast<unsigned char>(text[at + unit.size()])) == 0;
                const std::string number = text.substr(begin, at + unit.size() - begin);
                if (begin < at && isWordEnd && asked.find(number) == std::string::npos) {
                    EXPECT_TRUE(known.contains(number)) << topic->id << ": " << number;
                }
            }
        }
    }
}

} // namespace
} // namespace loadwarden
