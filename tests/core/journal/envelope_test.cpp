#include "core/journal/canonical_json.h"
#include "core/journal/envelope.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loadwarden {
namespace {

Envelope sample()
{
    Envelope envelope;
    envelope.seq = 7;
    envelope.prev = hashOf("before");
    envelope.recordedAt = {Instant{1'930'000'000'000}, -360};
    envelope.happenedAt = {Instant{1'929'999'000'000}, -360};
    envelope.happenedFrom = TimeSource::typed;
    envelope.actor = "st-1";
    envelope.role = "lead";
    envelope.workstation = "ws-1";
    envelope.kind = "ci.read";
    envelope.version = 2;
    envelope.subjects = {"ci-1", "ld-1"};
    envelope.reason = "said \"again\"\nand \\ more";
    envelope.supersedes = 5;
    envelope.basedOn = 6;
    envelope.body = R"({"a":[1,"2.5"],"seen":"unchanged"})";
    return envelope;
}

std::string faultOf(std::string_view bytes)
{
    const auto read = readEnvelope(bytes);
    const auto* const fault = std::get_if<EnvelopeFault>(&read);
    return fault != nullptr ? fault->what : "";
}

std::string replaced(std::string text, std::string_view from, std::string_view to)
{
    const auto at = text.find(from);
    EXPECT_NE(at, std::string::npos) << from;
    return text.replace(at, from.size(), to);
}

TEST(Envelope, IsWrittenAsThePageSays)
{
    EXPECT_EQ(
        writeEnvelope(sample()),
        R"({"seq":7,"prev":")" + hexOf(hashOf("before"))
            + R"(","recordedAt":[1930000000000,-360],"happenedAt":[1929999000000,-360,"typed"],)"
              R"("actor":["st-1","lead"],"workstation":"ws-1","kind":"ci.read","v":2,)"
              R"("subjects":["ci-1","ld-1"],"reason":"said \"again\"\nand \\ more",)"
              R"("supersedes":5,"basedOn":6,"body":{"a":[1,"2.5"],"seen":"unchanged"}})");
}

TEST(Envelope, IsReadBackWhole)
{
    const auto read = readEnvelope(writeEnvelope(sample()));
    ASSERT_TRUE(std::holds_alternative<Envelope>(read)) << std::get<EnvelopeFault>(read).what;
    EXPECT_EQ(std::get<Envelope>(read), sample());
}

TEST(Envelope, IsRefusedInAnyOtherForm)
{
    const std::string good = writeEnvelope(sample());
    EXPECT_NE(faultOf(""), "");
    EXPECT_NE(faultOf("[]"), "");
    EXPECT_NE(faultOf("7"), "");
    EXPECT_NE(faultOf(good.substr(0, good.size() - 1)), "");
    EXPECT_NE(faultOf(good + " "), "") << "a blank more";
    EXPECT_NE(faultOf(good + "\n"), "") << "the line's end is not part of the entry";
    EXPECT_NE(faultOf(replaced(good, R"("seq":7)", R"("seq":7.0)")), "");
    EXPECT_NE(faultOf(replaced(good, R"("seq":7)", R"("seq":07)")), "");
    EXPECT_NE(faultOf(replaced(good, R"("v":2)", R"("v":2,"v":2)")), "") << "a member twice";
    EXPECT_NE(faultOf(replaced(good, R"("v":2)", R"("v":2,"w":2)")), "") << "a member too many";
    EXPECT_NE(faultOf(replaced(good, R"("v":2,)", "")), "") << "a member missing";
    EXPECT_NE(
        faultOf(replaced(good, R"("supersedes":5,"basedOn":6)", R"("basedOn":6,"supersedes":5)")),
        "");
    EXPECT_NE(faultOf(replaced(good, "typed", "guessed")), "");
    EXPECT_NE(faultOf(replaced(good, R"("a":[1,)", R"("a":[1.5,)")), "") << "a fraction";
    EXPECT_NE(faultOf(replaced(good, R"("a":[1,)", R"("a":[1e3,)")), "");
    EXPECT_NE(faultOf(replaced(good, R"("a":[1,)", R"("a":[9007199254740993,)")), "");
    EXPECT_NE(faultOf(replaced(good, R"({"a":[1,"2.5"],"seen":"unchanged"})",
                               R"({"seen":"unchanged","a":[1,"2.5"]})")),
              "")
        << "unsorted";
    EXPECT_NE(faultOf(replaced(good, "ci.read", "ci\\u002eread")), "") << "escaped for nothing";
}

// FORMAT.md: the body is an object, no subject is named twice.
TEST(Envelope, HasAnObjectForABodyAndEachSubjectOnce)
{
    Envelope envelope = sample();
    for (const char* body : {"[]", "7", "\"x\"", "null", "true", "[{}]"}) {
        envelope.body = body;
        EXPECT_EQ(faultOf(writeEnvelope(envelope)), "its body is no object") << body;
    }
    envelope.body = "{}";
    for (const auto& subjects :
         {std::vector<std::string>{"ci-1", "ci-1"}, std::vector<std::string>{"b", "a", "c", "b"}}) {
        envelope.subjects = subjects;
        EXPECT_EQ(faultOf(writeEnvelope(envelope)), "a subject is named twice in it");
    }
    envelope.subjects = {"b", "a", "ba"};
    EXPECT_EQ(faultOf(writeEnvelope(envelope)), "");
}

TEST(Envelope, IsNotReadWhereANumberIsNoInteger)
{
    const std::string good = writeEnvelope(sample());
    const std::pair<const char*, const char*> members[] = {
        {R"("seq":7)", R"("seq":%)"},
        {"[1930000000000,-360]", "[%,-360]"},
        {"[1930000000000,-360]", "[1930000000000,%]"},
        {"[1929999000000,-360,", "[%,-360,"},
        {"[1929999000000,-360,", "[1929999000000,%,"},
        {R"("v":2)", R"("v":%)"},
        {R"("supersedes":5)", R"("supersedes":%)"},
        {R"("basedOn":6)", R"("basedOn":%)"},
    };
    for (const auto& [from, to] : members) {
        for (const char* number : {"1e300", "-1e300", "2.0", "1e400", "18446744073709551615",
                                   "9007199254740993", "true", "\"7\"", "null", "[]"}) {
            EXPECT_NE(faultOf(replaced(good, from, replaced(to, "%", number))), "")
                << to << ' ' << number;
        }
    }
}

TEST(CanonicalJson, TakesIntegersForIntegersOnly)
{
    const auto integer = [](const char* text) { return integerOf(nlohmann::json::parse(text)); };
    EXPECT_EQ(integer("0"), 0);
    EXPECT_EQ(integer("-9007199254740992"), -9'007'199'254'740'992);
    EXPECT_EQ(integer("9007199254740992"), 9'007'199'254'740'992);
    for (const char* text : {"1.0", "1e3", "1e300", "9007199254740993", "-9007199254740993",
                             "18446744073709551615", "true", "null", "\"1\"", "{}"}) {
        EXPECT_THROW((void)integer(text), nlohmann::json::exception) << text;
    }
}

TEST(CanonicalJson, SortsMembersAndLeavesNoBlanks)
{
    EXPECT_EQ(
        canonicalJson(nlohmann::json::parse(R"({ "b" : [ ], "a" : { }, "Z": null, "ä": true })")),
        R"({"Z":null,"a":{},"b":[],"ä":true})");
}

TEST(CanonicalJson, KeepsIntegersThatEveryReaderHoldsExactly)
{
    EXPECT_EQ(canonicalJson(nlohmann::json::parse("[9007199254740992,-9007199254740992]")),
              "[9007199254740992,-9007199254740992]");
    EXPECT_THROW((void)canonicalJson(nlohmann::json::parse("9007199254740993")),
                 nlohmann::json::exception);
    EXPECT_THROW((void)canonicalJson(nlohmann::json::parse("-9007199254740993")),
                 nlohmann::json::exception);
    EXPECT_THROW((void)canonicalJson(nlohmann::json::parse("18446744073709551615")),
                 nlohmann::json::exception);
}

TEST(CanonicalJson, RefusesWhatIsNestedWithoutEnd)
{
    const auto nested = [](std::size_t depth) {
        return nlohmann::json::parse(std::string(depth, '[') + std::string(depth, ']'));
    };
    EXPECT_EQ(canonicalJson(nested(33)).size(), 66);
    EXPECT_THROW((void)canonicalJson(nested(34)), nlohmann::json::exception);
    EXPECT_THROW((void)canonicalJson(nested(100'000)), nlohmann::json::exception);
}

} // namespace
} // namespace loadwarden
