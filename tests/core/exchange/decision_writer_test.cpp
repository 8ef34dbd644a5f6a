#include "core/exchange/decision_writer.h"
#include "core/quantities/json_text.h"
#include "core/quantities/thousandths.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <limits>

namespace loadwarden {

namespace {

using nlohmann::json;

Instant at(std::string_view text)
{
    return parseInstant(text).value();
}

Finding fullFinding()
{
    Finding finding;
    finding.key = Key::physicalBelow;
    finding.outcome = Outcome::fails;
    finding.reviewer = Reviewer::secondSupervisor;
    finding.reviewed = true;
    finding.subject = "temperature";
    finding.cause = Cause::lotExpired;
    finding.changesAt = at("2031-03-04T07:14-06:00");
    finding.newest = at("2031-03-04T01:02:03.004Z");
    finding.value = Quantity{Unit::celsius, 131'900};
    finding.limit = Quantity{Unit::celsius, 132'000};
    finding.count = 3;
    return finding;
}

Finding itemFinding(Key key, std::int32_t item)
{
    Finding finding;
    finding.key = key;
    finding.item = item;
    return finding;
}

Decision fullDecision()
{
    Decision decision;
    decision.lot = "LOT-\"1\"";
    decision.verdict = Verdict::quarantine;
    decision.findings = {fullFinding(), itemFinding(Key::recordMissing, -1),
                         itemFinding(Key::itemWet, 0), itemFinding(Key::itemTorn, 0),
                         itemFinding(Key::itemInTest, 2)};
    decision.items = {
        {"A", Verdict::reprocess}, {"B", Verdict::quarantine}, {"C", Verdict::reprocess}};
    decision.nextChangeAt = at("2031-03-04T13:14Z");
    return decision;
}

Policy somePolicy()
{
    Policy policy;
    policy.id = "p";
    policy.revision = 7;
    policy.digest = "0f";
    return policy;
}

const Policy policy = somePolicy();
const DecisionBasis basis{{1'930'396'440'000}, policy}; // 2031-03-04T13:14Z

std::string lineOf(const Decision& decision, const FindingSay& say = {})
{
    std::string line;
    appendDecision(line, decision, basis, say);
    return line;
}

} // namespace

TEST(DecisionLine, HoldsEveryField)
{
    const std::string line = lineOf(fullDecision());
    ASSERT_EQ(line.find('\n'), line.size() - 1);
    const json read = json::parse(line);
    EXPECT_EQ(read, json::parse(R"({
        "lot": "LOT-\"1\"", "verdict": "quarantine",
        "asOf": "2031-03-04T13:14:00.000Z", "policy": {"id": "p", "revision": 7, "digest": "0f"},
        "findings": [
            {"rule": "physical", "key": "physical.below", "outcome": "fails",
             "subject": "temperature", "because": "lot-expired", "reviewer": "second-supervisor", "reviewed": true,
             "changesAt": "2031-03-04T13:14:00.000Z", "newest": "2031-03-04T01:02:03.004Z",
             "value": {"celsius": 131.9}, "limit": {"celsius": 132}, "count": 3},
            {"rule": "record", "key": "record.missing", "outcome": "waits"}],
        "items": [
            {"label": "A", "verdict": "reprocess", "findings": [
                {"rule": "package", "key": "item.wet", "outcome": "waits"},
                {"rule": "package", "key": "item.torn", "outcome": "waits"}]},
            {"label": "B", "verdict": "quarantine", "findings": []},
            {"label": "C", "verdict": "reprocess", "findings": [
                {"rule": "in-test", "key": "item.in-test", "outcome": "waits"}]}],
        "nextChangeAt": "2031-03-04T13:14:00.000Z"})"));
}

TEST(DecisionLine, SaysNullForNoLotAndNoChange)
{
    EXPECT_EQ(
        lineOf(Decision{.verdict = Verdict::release}),
        "{\"lot\":null,\"verdict\":\"release\",\"asOf\":\"2031-03-04T13:14:00.000Z\","
        "\"policy\":{\"id\":\"p\",\"revision\":7,\"digest\":\"0f\"},\"findings\":[],\"items\":[],"
        "\"nextChangeAt\":null}\n");
}

TEST(DecisionLine, HoldsSentencesWhereSomebodySaysThem)
{
    const auto say = [](const Finding& finding) {
        return FindingText{.says = "says " + finding.subject, .next = "", .source = "a source"};
    };
    const json read = json::parse(lineOf(fullDecision(), say));
    EXPECT_EQ(read["findings"][0]["says"], "says temperature");
    EXPECT_FALSE(read["findings"][0].contains("next"));
    EXPECT_EQ(read["items"][0]["findings"][1]["source"], "a source");
}

TEST(DecisionLine, NamesEveryUnit)
{
    const std::pair<Unit, const char*> units[] = {
        {Unit::celsius, "celsius"},         {Unit::fahrenheit, "fahrenheit"},
        {Unit::minutes, "minutes"},         {Unit::seconds, "seconds"},
        {Unit::kPaAbsolute, "kPaAbsolute"}, {Unit::barAbsolute, "barAbsolute"},
        {Unit::kPaGauge, "kPaGauge"},       {Unit::barGauge, "barGauge"},
        {Unit::psiGauge, "psiGauge"},       {Unit::mgPerL, "mgPerL"},
        {Unit::percent, "percent"},
    };
    for (const auto& [unit, name] : units) {
        Decision decision;
        decision.findings = {fullFinding()};
        decision.findings[0].value = Quantity{unit, -745};
        EXPECT_EQ(json::parse(lineOf(decision))["findings"][0]["value"],
                  json::parse("{\"" + std::string(name) + "\": -0.745}"));
    }
}

TEST(JudgementLine, HoldsResultAndReasons)
{
    TestJudgement judgement{.lot = "BD-1", .result = TestResult::voided};
    judgement.findings = {itemFinding(Key::testNotRead, -1)};
    std::string line;
    appendJudgement(line, judgement, basis);
    EXPECT_EQ(line, "{\"lot\":\"BD-1\",\"test\":\"void\",\"asOf\":\"2031-03-04T13:14:00.000Z\","
                    "\"policy\":{\"id\":\"p\",\"revision\":7,\"digest\":\"0f\"},\"findings\":[{"
                    "\"rule\":\"test\","
                    "\"key\":\"test.not-read\",\"outcome\":\"waits\"}]}\n");
}

TEST(JsonText, EscapesWhatRfc8259AsksFor)
{
    std::string all;
    for (int c = 1; c < 0x80; ++c) {
        all += static_cast<char>(c);
    }
    all += '\0';
    all += "°C \xE2\x80\xA8 \xF0\x9F\xA7\xAA";
    std::string written;
    appendJsonString(written, all);
    for (const char c : written) {
        EXPECT_FALSE(static_cast<unsigned char>(c) < 0x20) << "RFC 8259, section 7";
    }
    EXPECT_EQ(json::parse(written), json(all));
}

TEST(JsonText, ReplacesWhatIsNoUtf8)
{
    // Unicode 15, table 3-7: overlong forms, surrogates, beyond U+10FFFF, cut and stray bytes.
    for (const char* bad : {"\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xF5",
                            "\xE2\x82", "\x80", "\xFF", "\xF0\x9F\xA7"}) {
        std::string written;
        appendJsonString(written, "a" + std::string(bad) + "b");
        const std::string read = json::parse(written);
        EXPECT_EQ(read.substr(0, 4), "a\xEF\xBF\xBD");
        EXPECT_EQ(read.back(), 'b');
    }
}

TEST(Thousandths, AreWrittenWithoutZerosAtTheEnd)
{
    const std::pair<std::int64_t, const char*> rows[] = {
        {0, "0"},
        {1, "0.001"},
        {10, "0.01"},
        {100, "0.1"},
        {1000, "1"},
        {131'900, "131.9"},
        {132'000, "132"},
        {-500, "-0.5"},
        {-1, "-0.001"},
        {1010, "1.01"},
        {-132'050, "-132.05"},
        {1'234'567, "1234.567"},
        {std::numeric_limits<std::int64_t>::min(), "-9223372036854775.808"},
    };
    for (const auto& [value, text] : rows) {
        EXPECT_EQ(thousandthsText(value), text);
    }
}

} // namespace loadwarden
