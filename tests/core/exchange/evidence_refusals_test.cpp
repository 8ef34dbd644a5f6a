#include "core/quantities/unseen.h"
#include "tests/core/exchange/evidence_support.h"

#include <gmock/gmock.h>

#include <array>
#include <cstdio>

// What is refused, where the error points, and what it says.

namespace loadwarden::tests {

namespace {

using testing::HasSubstr;

struct Refusal {
    std::string text;
    std::string pointer;
    std::string says;
};

void expectRefusals(const std::vector<Refusal>& refusals)
{
    for (const Refusal& expected : refusals) {
        const ReadProblem error = mustRefuse(expected.text);
        EXPECT_EQ(error.pointer, expected.pointer) << expected.text << '\n' << error.message;
        EXPECT_THAT(error.message, HasSubstr(expected.says)) << expected.text;
    }
}

TEST(EvidenceRefusals, FieldsUnknownTwiceOrMissing)
{
    expectRefusals({
        {withLoad(R"("lot":"L1","colour":1)"), "/load/colour", "has no field \"colour\""},
        {withLoad(R"("Lot":"L1")"), "/load/Lot", "was \"lot\" meant?"},
        {withLoad(R"("strat":"2031-03-04T06:00Z")"), "/load/strat", "was \"start\" meant?"},
        {withLoad(R"("a/b~c":1)"), "/load/a~1b~0c", "no field"},
        {withLoad("\"a\\nb\":1"), "/load", "no field \"a<U+000A>b\""},
        {withLoad(R"(")" + std::string(5'000, 'x') + R"(":1)"), "/load", "xxx...\""},
        {withLoad(R"("":1)"), "/load/", "no field \"\""},
        {withLoad(R"("lot":"L1","lot":"L1")"), "/load/lot", "stands twice"},
        {withLoad(R"("items":[{"label":"I1"},{"label":"I2","label":"I3"}])"), "/load/items/1/label",
         "stands twice"},
        {withLoad(R"("l\u006ft":"L1","lot":"L1")"), "/load/lot", "stands twice"},
        {withLoad(R"("verifications":[{"by":"p1"}])"), "/load/verifications/0",
         "needs the field \"happenedAt\""},
        {withLoad(R"("items":[{}])"), "/load/items/0", "an item needs the field \"label\""},
        {R"({"evidenceVersion":1,"load":{}})", "", "needs the field \"facility\""},
        {"{}", "", "needs the fields \"evidenceVersion\", \"facility\""},
        {R"({"evidenceVersion":1,"facility":{},"load":{}})", "/facility", "\"timeZone\""},
        {R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"}})", "",
         "needs the field \"load\" or the field \"test\""},
    });
}

TEST(EvidenceRefusals, LoadAndTest)
{
    const std::string top = R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},)";
    const std::string test = R"("lot":"T1","start":"2031-03-04T06:00Z"})";
    expectRefusals({
        {top + R"("load":{},"test":{"kind":"leak",)" + test + "}", "", "not of both"},
        {top + R"("load":{},"test":{"kind":"load",)" + test + "}", "", "not of both"},
        {top + R"("test":{"kind":"load",)" + test + "}", "/test/kind",
         "written in the field \"load\""},
        {top + R"("test":{"kind":"leak"}})", "/test", "\"lot\", \"start\""},
    });
}

TEST(EvidenceRefusals, KindsOfValues)
{
    expectRefusals({
        {withLoad(R"("lot":7)"), "/load/lot",
         "must be a text in quotation marks; here stands a number"},
        {withLoad(R"("lot":null)"), "/load/lot", "leave the field out"},
        {withLoad(R"("lot":true)"), "/load/lot", "true or false"},
        {withLoad(R"("counter":"7")"), "/load/counter", "without quotation marks"},
        {withLoad(R"("start":20310304)"), "/load/start", "here stands a number"},
        {withLoad(R"("printout":[])"), "/load/printout", "a printout { ... }; here stands a list"},
        {withLoad(R"("items":{})"), "/load/items", "a list [ ... ]; here stands an object"},
        {withLoad(R"("items":["I1"])"), "/load/items/0", "an item { ... }; here stands a text"},
        {withLoad(R"("outcome":1)"), "/load/outcome", "here stands a number"},
        {withItem(R"("internalVisible":"yes")"), "/load/items/0/internalVisible", "true or false"},
        {withItem(R"("internalVisible":1)"), "/load/items/0/internalVisible", "true or false"},
        {withItem(R"("alsoInLots":["L1",2])"), "/load/items/0/alsoInLots/1", "a text"},
        {withTop(R"("specification":7)"), "/specification", "the name of a stored one"},
        {R"([{"evidenceVersion":1}])", "", "a record { ... }; here stands a list"},
        {"7", "", "here stands a number"},
    });
}

TEST(EvidenceRefusals, TextsAndWords)
{
    const std::string sixtyFour(64, 'x');
    std::string accents;
    for (int i = 0; i < 64; ++i) {
        accents += "\xC3\xA9";
    }
    EXPECT_EQ(mustRead(withLoad(R"("lot":")" + sixtyFour + '"')).load.lot, sixtyFour);
    EXPECT_EQ(mustRead(withLoad(R"("lot":")" + accents + '"')).load.lot, accents);
    EXPECT_EQ(mustRead(withTop(R"("comment":")" + std::string(2'000, 'x') + '"')).comment.size(),
              2'000U);
    expectRefusals({
        {withLoad(R"("lot":"")"), "/load/lot", "must not be empty"},
        {withLoad(R"("lot":")" + sixtyFour + "x\""), "/load/lot",
         "at most 64 characters; this has 65"},
        {withLoad(R"("lot":")" + accents + "x\""), "/load/lot",
         "at most 64 characters; this has 65"},
        {withTop(R"("comment":")" + std::string(2'001, 'x') + '"'), "/comment",
         "at most 2000 characters"},
        {withLoad(R"("outcome":"end")"), "/load/outcome",
         "must be \"ended\" or \"aborted\", not \"end\"; was \"ended\" meant?"},
        {withLoad(R"("outcome":"")"), "/load/outcome", "must be"},
        {withTop(R"("packagings":[{"id":"P1","form":"wrap","methods":["unknown"]}])"),
         "/packagings/0/methods/0", "\"dry-heat\", not \"unknown\""},
        {withTop(
             R"("products":[{"id":"C1","kind":"chemical","type":1,"methods":[],"response":"colour",
            "cycleTypes":[]}])"),
         "/products/0/cycleTypes", "the list is empty"},
    });
}

/// A character as an escape of JSON.
std::string escaped(char32_t code)
{
    std::array<char, 16> text{};
    if (code >= 0x10000) {
        const auto high = static_cast<unsigned>(0xD800 + ((code - 0x10000) >> 10U));
        const auto low = static_cast<unsigned>(0xDC00 + (code & 0x3FFU));
        (void)std::snprintf(text.data(), text.size(), "\\u%04X\\u%04X", high, low);
    } else {
        (void)std::snprintf(text.data(), text.size(), "\\u%04X", static_cast<unsigned>(code));
    }
    return text.data();
}

TEST(EvidenceRefusals, NamesHoldNoCharacterThatCannotBeSeen)
{
    // Which these are is tested in quantities/unseen_test.cpp.
    const std::pair<std::string, std::string> rows[] = {
        {R"("lot":"%")", "/load/lot"},
        {R"("operator":"%")", "/load/operator"},
        {R"("verifications":[{"by":"%","happenedAt":"2031-03-04T06:00Z"}])",
         "/load/verifications/0/by"},
        {R"("alarms":[{"code":"%","happenedAt":"2031-03-04T06:00Z"}])", "/load/alarms/0/code"},
        {R"("items":[{"label":"%"}])", "/load/items/0/label"},
        {R"("items":[{"label":"I1","alsoInLots":["%"]}])", "/load/items/0/alsoInLots/0"},
        {R"("reviews":[{"finding":"%","answer":"isolated","newestSeen":"2031-03-04T06:00Z",)"
         R"("happenedAt":"2031-03-04T06:00Z"}])",
         "/load/reviews/0/finding"},
        {R"("immediateUse":{"caseReference":"%"})", "/load/immediateUse/caseReference"},
    };
    for (const auto& [row, pointer] : rows) {
        const std::size_t at = row.find('%');
        for (const char32_t code :
             {U'\x09', U'\x0A', U'\x7F', U'\x85', U'\xA0', U'\xAD', U'\x1680', U'\x200E', U'\x202E',
              U'\x2060', U'\x3000', U'\xFEFF', U'\xE0041'}) {
            const ReadProblem problem =
                mustRefuse(withLoad(row.substr(0, at) + "p1" + escaped(code) + row.substr(at + 1)));
            EXPECT_EQ(problem.pointer, pointer);
            EXPECT_THAT(problem.message, HasSubstr("character 3 is " + codeText(code))) << pointer;
        }
        mustRead(withLoad(row.substr(0, at) + "Zo\u00EB 1-\u4E01" + row.substr(at + 1)));
    }
}

TEST(EvidenceRefusals, FreeTextsHoldNoControlCharacterButTabAndLineFeed)
{
    for (const char32_t code : {U'\x0D', U'\x1B', U'\x7F', U'\x80', U'\x9B', U'\x9F'}) {
        const ReadProblem problem = mustRefuse(withTop("\"comment\":\"x" + escaped(code) + "\""));
        EXPECT_EQ(problem.pointer, "/comment");
        EXPECT_THAT(problem.message,
                    HasSubstr("character 2 is " + codeText(code) + ", a control character"));
    }
    for (const char32_t code : {U'\x09', U'\x0A', U'\xA0', U'\x200D', U'\x202E'}) {
        mustRead(withTop("\"comment\":\"x" + escaped(code) + "\""));
    }
}

TEST(EvidenceRefusals, FieldNamesAreRepeatedWithoutWhatCannotBeSeen)
{
    const ReadProblem problem = mustRefuse(withLoad("\"l\u202Eot\":1"));
    EXPECT_EQ(problem.pointer, "/load");
    EXPECT_THAT(problem.message, HasSubstr("no field \"l<U+202E>ot\""));
}

TEST(EvidenceRefusals, WordsAreThoseOfTheirPlace)
{
    EXPECT_THAT(
        mustRefuse(withLoad(R"("pcds":[{"id":"D","vials":[{"id":"V","readings":[)"
                            R"({"seen":"blue","happenedAt":"2031-03-04T06:00Z"}]}]}])"))
            .message,
        testing::StartsWith("must be \"growth\", \"no-growth\" or \"unclear\", not \"blue\""));
    EXPECT_THAT(mustRefuse(withLoad(R"("pcds":[{"id":"D","indicators":[{"readings":[)"
                                    R"({"seen":"growth","happenedAt":"2031-03-04T06:00Z"}]}]}])"))
                    .message,
                testing::AllOf(HasSubstr("\"end-colour-reached\""), Not(HasSubstr("no-growth"))));
}

TEST(EvidenceRefusals, AnIncubatorIsNotBackInRangeBeforeItWasOut)
{
    const auto span = [](const std::string& to) {
        return withTop(
            R"("incubators":[{"id":"Q","outOfRange":[{"from":"2031-03-04T12:00+00:00","to":")" + to
            + "\"}]}]");
    };
    const ReadProblem problem = mustRefuse(span("2031-03-04T11:59:59.999Z"));
    EXPECT_EQ(problem.pointer, "/incubators/0/outOfRange/0/to");
    EXPECT_THAT(problem.message, HasSubstr("must not be before \"from\""));
    mustRead(span("2031-03-04T12:00Z"));
}

TEST(EvidenceRefusals, Moments)
{
    std::vector<Refusal> refusals;
    for (const char* wrong : {"2031-03-04",
                              "2031-03-04T07:14",
                              "2031-02-29T07:14Z",
                              "2031-04-31T07:14Z",
                              "2031-13-01T07:14Z",
                              "1999-12-31T07:14Z",
                              "2100-01-01T07:14Z",
                              "2031-03-04T24:00Z",
                              "2031-03-04T07:60Z",
                              "2031-03-04T07:14:60Z",
                              "2031-03-04T07:14:00.1234Z",
                              "2031-03-04T07:14:00.Z",
                              "2031-03-04T07:14+15:00",
                              "2031-03-04T07:14+0600",
                              "2031-03-04 07:14Z",
                              "2031-03-04T07:14z",
                              "2031-03-04T07:14Z ",
                              " 2031-03-04T07:14Z",
                              "now",
                              ""}) {
        refusals.push_back({withLoad(R"("start":")" + std::string(wrong) + '"'), "/load/start",
                            "written like 2031-03-04T07:14-06:00"});
    }
    for (const char* wrong : {"2031-02-29", "2031-3-4", "04.03.2031", "2031-03-04T07:14Z", ""}) {
        refusals.push_back({withTop(R"("lots":[{"product":"C1","number":"N1","expires":")"
                                    + std::string(wrong) + "\"}]"),
                            "/lots/0/expires", "written like 2031-03-04"});
    }
    expectRefusals(refusals);
    EXPECT_EQ(mustRead(withLoad(R"("start":"2032-02-29T23:59:59.999+00:00")")).load.start,
              parseInstant("2032-02-29T23:59:59.999Z"));
}

// A time with another offset than the facility's was typed wrong, or its zone was: either moves the
// moment by hours.
TEST(EvidenceRefusals, TimesThatTheFacilitysClocksDoNotShow)
{
    // The zone stands behind the times. 2031-03-09 clocks go forward, 2031-11-02 back (IANA).
    const auto start = [](const std::string& time) {
        return R"({"evidenceVersion":1,"load":{"start":")" + time
               + R"("},"facility":{"timeZone":"America/Chicago"}})";
    };
    for (const char* right :
         {"2031-03-04T07:14-06:00", "2031-03-04T13:14Z", "2031-07-04T07:14-05:00",
          "2031-03-09T01:59-06:00", "2031-03-09T03:00-05:00", "2031-11-02T01:30-05:00",
          "2031-11-02T01:30-06:00"}) {
        mustRead(start(right));
    }
    for (const char* wrong :
         {"2031-03-04T07:14-05:00", "2031-03-04T07:14+01:00", "2031-03-04T13:14+00:00",
          "2031-07-04T07:14-06:00", "2031-03-09T02:30-06:00", "2031-11-02T00:30-06:00"}) {
        SCOPED_TRACE(wrong);
        const ReadProblem problem = mustRefuse(start(wrong));
        EXPECT_EQ(problem.pointer, "/load/start");
        EXPECT_THAT(problem.message, HasSubstr("America/Chicago"));
    }
    EXPECT_THAT(mustRefuse(start("2031-07-04T07:14-06:00")).message,
                HasSubstr("would be 2031-07-04T08:14-05:00 there"));
    // Each is said, beside whatever else is wrong; without a zone that is known none is.
    const auto read = readEvidence(
        R"({"evidenceVersion":1,"facility":{"timeZone":"Europe/Vienna"},"decideAt":"2031-03-04T07:14Z",
            "load":{"start":"2031-03-04T07:14-06:00","end":"2031-03-04T08:14-06:00","counter":-1}})",
        "test", 1, nullptr);
    EXPECT_EQ(std::get<ReadError>(read).problems.size(), 3U);
    const auto unknown = readEvidence(
        R"({"evidenceVersion":1,"facility":{"timeZone":"Europe/Nowhere"},
            "load":{"start":"2031-03-04T07:14-06:00"}})",
        "test", 1, nullptr);
    ASSERT_EQ(std::get<ReadError>(unknown).problems.size(), 1U);
    EXPECT_EQ(std::get<ReadError>(unknown).problems[0].pointer, "/facility/timeZone");
}

TEST(EvidenceRefusals, Numbers)
{
    const auto counter = [](const std::string& number) {
        return withLoad("\"counter\":" + number);
    };
    const auto celsius = [](const std::string& number) {
        return withLoad(R"("readings":[{"parameter":"temperature","celsius":)" + number
                        + R"(,"happenedAt":"2031-03-04T06:00Z"}])");
    };
    EXPECT_EQ(mustRead(counter("1000000000")).load.counter, 1'000'000'000);
    EXPECT_EQ(mustRead(counter("1e9")).load.counter, 1'000'000'000);
    EXPECT_EQ(mustRead(counter("7.0")).load.counter, 7);
    EXPECT_EQ(mustRead(counter("-0")).load.counter, 0);
    EXPECT_EQ(mustRead(celsius("500.000")).load.readings.at(0).value.thousandths, 500'000);
    EXPECT_EQ(mustRead(celsius("-90")).load.readings.at(0).value.thousandths, -90'000);
    const std::string whole = "must be a whole number from 0 to 1000000000";
    const std::string decimal = "must be a number from -90 to 500 with at most 2 decimals";
    expectRefusals({
        {counter("1000000001"), "/load/counter", whole},
        {counter("-1"), "/load/counter", whole},
        {counter("7.5"), "/load/counter", whole},
        {counter("99999999999999999999999"), "/load/counter", whole},
        {counter("1e999"), "/load/counter", whole},
        {celsius("500.01"), "/load/readings/0/celsius", decimal},
        {celsius("-90.01"), "/load/readings/0/celsius", decimal},
        {celsius("132.001"), "/load/readings/0/celsius", decimal},
        {celsius("1e-400"), "/load/readings/0/celsius", decimal},
        {R"({"evidenceVersion":2,"facility":{"timeZone":"UTC"},"load":{}})", "/evidenceVersion",
         "must be 1"},
        {withSterilizer(R"("clockOffsets":[{"from":"2031-03-04T06:00Z","seconds":1000001}])"),
         "/sterilizer/clockOffsets/0/seconds", "from -1000000 to 1000000"},
        {R"({"evidenceVersion":1,"facility":{"timeZone":"UTC","atmosphereKPa":49.999},"load":{}})",
         "/facility/atmosphereKPa", "from 50 to 110 with at most 3 decimals"},
    });
}

TEST(EvidenceRefusals, TimeZones)
{
    for (const char* wrong : {"Nowhere/Land", "", "UTC+3", "../etc/passwd", "america chicago"}) {
        const ReadProblem error = mustRefuse(R"({"evidenceVersion":1,"facility":{"timeZone":")"
                                             + std::string(wrong) + R"("},"load":{}})");
        EXPECT_EQ(error.pointer, "/facility/timeZone") << wrong;
        EXPECT_THAT(error.message, HasSubstr("America/Chicago")) << wrong;
    }
}

TEST(EvidenceRefusals, ReadingsHaveExactlyOneFittingValue)
{
    const auto reading = [](const std::string& fields) {
        return withLoad(R"("readings":[{"happenedAt":"2031-03-04T06:00Z",)" + fields + "}]");
    };
    expectRefusals({
        {reading(R"("parameter":"exposure")"), "/load/readings/0", "\"minutes\" or \"seconds\""},
        {reading(R"("parameter":"exposure","minutes":4,"seconds":240)"), "/load/readings/0",
         "more than one value"},
        {reading(R"("parameter":"exposure","celsius":132)"), "/load/readings/0/celsius",
         "it needs \"minutes\" or \"seconds\""},
        {reading(R"("parameter":"temperature","celsius":132,"minutes":4)"), "/load/readings/0",
         "more than one value"},
        {reading(R"("psiGauge":28,"parameter":"humidity")"), "/load/readings/0/psiGauge",
         "\"percent\""},
        {reading(R"("celsius":132)"), "/load/readings/0", "needs the field \"parameter\""},
    });
}

TEST(EvidenceRefusals, ProductsOfOneKindHaveNoFieldsOfTheOther)
{
    const auto product = [](const std::string& fields) {
        return withTop(R"("products":[{"id":"X1","methods":["steam"],)" + fields + "}]");
    };
    const std::string chemical = R"("kind":"chemical","type":5,"response":"colour",)";
    const std::string biological =
        R"("kind":"biological","response":"growth","species":"other","releaseMinutes":60,)";
    std::vector<Refusal> refusals = {
        {product(R"("kind":"chemical","response":"colour")"), "/products/0",
         "needs the field \"type\""},
        {product(R"("kind":"biological","response":"growth","releaseMinutes":60)"), "/products/0",
         "needs the field \"species\""},
        {product(R"("kind":"biological","response":"growth","species":"other")"), "/products/0",
         "needs the field \"releaseMinutes\""},
        {product(R"("kind":"chemical","type":5,"response":"growth")"), "/products/0/response",
         "\"moving-front\""},
        {product(R"("kind":"biological","response":"sheet","species":"other","releaseMinutes":60)"),
         "/products/0/response", "\"growth\""},
        {product(R"("kind":"chemical","type":7,"response":"colour")"), "/products/0/type",
         "from 1 to 6"},
        {product(biological + R"("implantIndicatorTypes":[5,0])"),
         "/products/0/implantIndicatorTypes/1", "from 1 to 6"},
        {product(biological + R"("implantIndicatorTypes":[])"), "/products/0/implantIndicatorTypes",
         "empty"},
    };
    for (const char* field :
         {R"("species":"other")", R"("releaseMinutes":60)", R"("lastMinutes":60)",
          R"("latestMinutes":60)", R"("startWithinMinutes":60)", R"("needsActivation":false)",
          R"("hasProcessIndicator":false)", R"("control":"day")",
          R"("implantIndicatorTypes":[5])"}) {
        const std::string text(field);
        refusals.push_back({product(chemical + text),
                            "/products/0/" + text.substr(1, text.find('"', 1) - 1), "a chemical"});
    }
    for (const char* field :
         {R"("type":5)", R"("readWithinMinutes":60)", R"("leastMinutes":3)", R"("mostMinutes":3)",
          R"("leastCelsius":132)", R"("mostCelsius":134)", R"("dryingForbidden":false)"}) {
        const std::string text(field);
        refusals.push_back({product(biological + text),
                            "/products/0/" + text.substr(1, text.find('"', 1) - 1),
                            "a biological"});
    }
    expectRefusals(refusals);
}

TEST(EvidenceRefusals, NamesThatStandTwice)
{
    const std::string product =
        R"({"id":"X","kind":"chemical","type":5,"methods":[],"response":"colour"})";
    const std::string vials = R"("vials":[{"id":"V1"},{"id":"V2"}])";
    const std::string cycle = R"("kind":"load","start":"2031-03-04T06:00Z")";
    expectRefusals({
        {withTop("\"products\":[" + product + ',' + product + ']'), "/products/1/id",
         "/products/0"},
        {withTop(R"("lots":[{"product":"A","number":"1"},{"product":"A","number":"2"},
            {"product":"B","number":"1"},{"product":"A","number":"2"}])"),
         "/lots/3", "/lots/1"},
        {withTop(R"("packagings":[{"id":"P","form":"wrap"},{"id":"Q","form":"wrap"},
            {"id":"P","form":"pouch"}])"),
         "/packagings/2/id", "/packagings/0"},
        {withTop(R"("controls":[{"id":"K"},{"id":"K"}])"), "/controls/1/id", "/controls/0/id"},
        {withTop(R"("incubators":[{"id":"Q"},{"id":"Q"}])"), "/incubators/1/id", "/incubators/0"},
        {withLoad(R"("items":[{"label":"I1"},{"label":"I1"}])"), "/load/items/1/label",
         "/load/items/0"},
        {withLoad(R"("items":[{"label":"I1"},{"label":"i 1"}])"), "/load/items/1/label",
         "/load/items/0"},
        {withLoad(R"("pcds":[{"id":"D"},{"id":"D"}])"), "/load/pcds/1/id", "/load/pcds/0"},
        {withLoad(R"("pcds":[{"id":"D",)" + vials + R"(},{"id":"E","vials":[{"id":"V2"}]}])"),
         "/load/pcds/1/vials/0/id", "/load/pcds/0/vials/1/id"},
        {withSterilizer("\"cycles\":[{" + cycle + R"(,"lot":"H1",)" + vials + "},{" + cycle
                        + R"(,"lot":"H2",)" + vials + "}]"),
         "/sterilizer/cycles/1/vials/0/id", "/sterilizer/cycles/0/vials/0/id"},
        {withSterilizer("\"cycles\":[{" + cycle + R"(,"lot":"H1"},{)" + cycle + R"(,"lot":"H1"}])"),
         "/sterilizer/cycles/1/lot", "/sterilizer/cycles/0"},
        {R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"controls":[{"id":"V2"}],"test":{)"
         R"("kind":"leak","lot":"T1","start":"2031-03-04T06:00Z",)"
             + vials + "}}",
         "/test/vials/1/id", "/controls/0/id"},
        {R"({"evidenceVersion":1,"facility":{"timeZone":"UTC"},"load":{"lot":"H2"},"sterilizer":{"id":"S1",)"
         R"("cycles":[{"lot":"H1",)"
             + cycle + R"(},{"lot":"H2",)" + cycle + "}]}}",
         "/load/lot", "/sterilizer/cycles/1"},
    });
    mustRead(withTop(R"("lots":[{"product":"A","number":"1"},{"product":"A","number":"11"},
        {"product":"A1","number":"1"}])"));
}

TEST(EvidenceRefusals, NoMoreObjectsThanARecordCanNeed)
{
    std::string items;
    for (int i = 0; i < 100'001; ++i) {
        items += (i == 0 ? "{" : ",{") + (R"("label":")" + std::to_string(i)) + "\"}";
    }
    EXPECT_THAT(mustRefuse(withLoad("\"items\":[" + items + "]")).message,
                HasSubstr("20000 objects"));
}

} // namespace

} // namespace loadwarden::tests
