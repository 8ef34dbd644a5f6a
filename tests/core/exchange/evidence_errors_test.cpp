#include "tests/core/exchange/evidence_support.h"

#include <gmock/gmock.h>

// Where an error is said to lie, and how many are said.

namespace loadwarden::tests {

namespace {

using testing::HasSubstr;

/// A load of several lines, each part on a line of its own from line 4 on.
std::string typed(const std::vector<std::string>& lines)
{
    std::string text =
        "{\"evidenceVersion\": 1,\n \"facility\": {\"timeZone\": \"UTC\"},\n \"load\": {\n";
    for (const std::string& line : lines) {
        text += line + '\n';
    }
    return text + " }\n}\n";
}

struct Placed {
    std::vector<std::string> lines;
    TextPlace place;
    std::string pointer;
    std::string says;
};

void expectPlaced(const std::vector<Placed>& cases)
{
    for (const Placed& c : cases) {
        const ReadProblem problem = mustRefuse(typed(c.lines));
        EXPECT_EQ(problem.place, c.place) << typed(c.lines) << problem.message;
        EXPECT_EQ(problem.pointer, c.pointer) << typed(c.lines) << problem.message;
        EXPECT_THAT(problem.message, HasSubstr(c.says)) << typed(c.lines);
    }
}

TEST(EvidenceErrors, ValuesAreWrongWhereTheyBegin)
{
    expectPlaced({
        {{R"(  "lot": 7)"}, {4, 10}, "/load/lot", "a text in quotation marks"},
        {{R"(  "lot": {"a": [1, null, "x"]})"}, {4, 10}, "/load/lot", "here stands an object"},
        {{R"(  "counter": -1)"}, {4, 14}, "/load/counter", "from 0 to 1000000000, not -1"},
        {{R"(  "clock": "mine")"}, {4, 12}, "/load/clock", "\"facility\" or \"sterilizer\""},
        {{R"(  "color": "red")"}, {4, 3}, "/load/color", "no field"},
        {{R"(  "lot": "L1", "lot": "L2")"}, {4, 16}, "/load/lot", "twice"},
        {{R"(  "items": [)", R"(   {"implant": "no"})", "  ]"},
         {5, 4},
         "/load/items/0",
         "needs the field \"label\""},
        {{R"(  "items": [{"label": "I1"},)", R"(   {"label": "I1"}])"},
         {5, 14},
         "/load/items/1/label",
         "stands already"},
        {{R"(  "readings": [{"parameter": "exposure",)",
          R"(    "celsius": 132, "happenedAt": "2031-03-04T06:00Z"}])"},
         {5, 16},
         "/load/readings/0/celsius",
         "cannot be stated so"},
        {{R"(  "start": "2031-03-04T07:14")"},
         {4, 12},
         "/load/start",
         "the offset from UTC is missing"},
    });
}

TEST(EvidenceErrors, WhatIsMissingIsSaidWhereItIsMissing)
{
    expectPlaced({
        {{R"(  "lot": "L1")", R"(  "clock": "facility")"},
         {4, 14},
         "/load",
         "a comma is missing here"},
        {{R"(  "items": [)", R"(   {"label": "I1"})", R"(   {"label": "I2"}])"},
         {5, 19},
         "/load/items",
         "a comma is missing here"},
        {{R"(  "lot": "L1,)", R"(  "clock": "facility")"},
         {4, 10},
         "/load/lot",
         "not closed on its line"},
        {{R"(  "lot": L1",)", R"(  "clock": "facility")"},
         {4, 10},
         "/load/lot",
         "a text stands in quotation marks"},
        {{R"(  "lot: "L1",)", R"(  "clock": "facility")"},
         {4, 10},
         "/load",
         "a colon is missing after the name"},
        {{R"(  lot": "L1",)", R"(  "clock": "facility")"},
         {4, 3},
         "/load",
         "the name of a field must stand here"},
        {{R"(  "lot" "L1")"}, {4, 8}, "/load", "a colon is missing after the name \"lot\""},
        {{R"(  "lot": "L1",)"}, {4, 14}, "/load", "the comma before this bracket is one too many"},
        {{R"(  "items": [{"label": "I1"},])"}, {4, 29}, "/load/items/1", "one too many"},
        {{R"(  "lot": 'L1')"}, {4, 10}, "/load/lot", "double quotation marks"},
        {{"  \"lot\": \xE2\x80\x9CL1\xE2\x80\x9D"},
         {4, 10},
         "/load/lot",
         "straight quotation marks"},
        {{R"(  "lot": "L1", // the third)"}, {4, 16}, "/load", "a comment cannot stand here"},
        {{R"(  "lot":,)"}, {4, 9}, "/load/lot", "a value is missing"},
    });
}

TEST(EvidenceErrors, ADecimalCommaHasItsOwnSentence)
{
    const std::string reading =
        R"("parameter": "temperature", "happenedAt": "2031-03-04T06:00Z"}])";
    expectPlaced({
        {{R"(  "readings": [{"fahrenheit": 270,3, )" + reading},
         {4, 31},
         "/load/readings/0/fahrenheit",
         "with a point, not with a comma: 270.3"},
    });
}

TEST(EvidenceErrors, AMisspeltFieldMayHaveADecimalCommaToo)
{
    const ReadError error = mustRefuseAll(withLoad(R"("conter":7,5,"lot":"L1")"));
    ASSERT_EQ(error.problems.size(), 2U);
    EXPECT_THAT(error.problems[0].message, HasSubstr("was \"counter\" meant?"));
    EXPECT_EQ(error.problems[1].pointer, "/load/conter");
    EXPECT_THAT(error.problems[1].message, HasSubstr("7.5"));
}

TEST(EvidenceErrors, AMonthIsToBeWrittenWithItsLastDay)
{
    const std::pair<const char*, const char*> rows[] = {
        {"2031-12", "its last day, 2031-12-31"},
        {"2032-02", "its last day, 2032-02-29"},
        {"2031-02", "its last day, 2031-02-28"},
        {"2031-04", "its last day, 2031-04-30"},
    };
    for (const auto& [month, says] : rows) {
        const ReadProblem problem = mustRefuse(withTop(
            R"("lots":[{"product":"C1","number":"N1","expires":")" + std::string(month) + "\"}]"));
        EXPECT_EQ(problem.pointer, "/lots/0/expires");
        EXPECT_THAT(problem.message, HasSubstr(says));
    }
    const ReadProblem none =
        mustRefuse(withTop(R"("lots":[{"product":"C1","number":"N1","expires":"2031-13"}])"));
    EXPECT_THAT(none.message, Not(HasSubstr("last day")));
}

TEST(EvidenceErrors, AllOfARecordAreListedInTheOrderOfTheFile)
{
    const ReadError error = mustRefuseAll(typed({
        R"(  "lot": 7,)",
        R"(  "counter": 12,5)",
        R"(  "items": [{"implant": "perhaps"},)",
        R"(   {"label": "", "checks": [{"dry": yes}]}],)",
        R"(  "clock": 1)",
    }));
    std::vector<std::string> said;
    for (const ReadProblem& problem : error.problems) {
        said.push_back(std::to_string(problem.place.line) + ' ' + problem.pointer);
    }
    EXPECT_EQ(said,
              (std::vector<std::string>{"4 /load/lot", "5 /load/counter", "5 /load",
                                        "6 /load/items/0", "6 /load/items/0/implant",
                                        "7 /load/items/1/label", "7 /load/items/1/checks/0/dry"}))
        << described(error);
    EXPECT_FALSE(error.more);
}

TEST(EvidenceErrors, AtMostTwentyAreListed)
{
    const auto items = [](int count) {
        std::string text;
        for (int i = 0; i < count; ++i) {
            text += std::string(i == 0 ? "" : ",") + R"({"label":)" + std::to_string(i) + "}";
        }
        return withLoad("\"items\":[" + text + "]");
    };
    const ReadError some = mustRefuseAll(items(20));
    EXPECT_EQ(some.problems.size(), mostProblems);
    EXPECT_FALSE(some.more);
    const ReadError many = mustRefuseAll(items(21));
    EXPECT_EQ(many.problems.size(), mostProblems);
    EXPECT_TRUE(many.more);
}

TEST(EvidenceErrors, SourceAndRecordAreNamed)
{
    const auto result = readEvidence("{}", "a file", 7, nullptr, {5, 9});
    const auto* error = std::get_if<ReadError>(&result);
    ASSERT_NE(error, nullptr);
    EXPECT_EQ(error->source, "a file");
    EXPECT_EQ(error->record, 7);
    EXPECT_EQ(error->problems.at(0).place, (TextPlace{5, 9}));
}

} // namespace

} // namespace loadwarden::tests
