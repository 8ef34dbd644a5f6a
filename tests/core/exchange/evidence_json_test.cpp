#include "tests/core/exchange/evidence_support.h"

#include <gmock/gmock.h>

// The JSON of a record (RFC 8259), each text also given to a general-purpose library.

namespace loadwarden::tests {

namespace {

using testing::HasSubstr;

/// Cases of the grammar of RFC 8259, each a text put in for the value of the comment or of a
/// number.
struct JsonCase {
    std::string text;
    bool good;
};

std::vector<JsonCase> jsonCases()
{
    std::vector<JsonCase> cases;
    const std::pair<const char*, bool> texts[] = {
        {R"("")", true},
        {R"("plain")", true},
        {R"("\" \\ \/ \n \t")", true},
        {R"("\u0041\u00e9\u20ac\uD83D\uDE00")", true},
        {"\"\xC3\xA9 \xE2\x82\xAC \xF0\x9F\x98\x80\"", true},
        {R"("\x41")", false},
        {R"("\u12G4")", false},
        {R"("\u12")", false},
        {R"("\ud83d")", false},
        {R"("\ud83d\n")", false},
        {R"("\ud83d\u0041")", false},
        {R"("\ude00")", false},
        {"\"line\nbreak\"", false},
        {"\"tab\tstop\"", false},
        {"\"\x1F\"", false},
        {"\"\x80\"", false},
        {"\"\xC0\x80\"", false},         // longer than needed
        {"\"\xC3\"", false},             // cut short
        {"\"\xE0\x9F\xBF\"", false},     // longer than needed
        {"\"\xED\xA0\x80\"", false},     // a surrogate
        {"\"\xF0\x8F\xBF\xBF\"", false}, // longer than needed
        {"\"\xF4\x90\x80\x80\"", false}, // beyond U+10FFFF
        {"\"\xF5\x80\x80\x80\"", false},
        {"\"\\n\xC3\"", false},
        {"\"\\n\n\"", false},
        {"'plain'", false},
        {"plain", false},
        {"\"open", false},
        {"\"open\\\"", false},
        {"", false},
    };
    for (const auto& [text, good] : texts) {
        cases.push_back({withTop("\"comment\":" + std::string(text)), good});
    }
    const std::pair<const char*, bool> numbers[] = {
        {"0", true},    {"-0", true},    {"10", true},    {"1.5", true},  {"1e1", true},
        {"1E+1", true}, {"1e-1", true},  {"10.25", true}, {"01", false},  {"-01", false},
        {"1.", false},  {".5", false},   {"+1", false},   {"-", false},   {"1e", false},
        {"1e+", false}, {"1.e1", false}, {"0x1", false},  {"NaN", false}, {"Infinity", false},
        {"1 2", false}, {"00", false},   {"--1", false},
    };
    for (const auto& [number, good] : numbers) {
        cases.push_back(
            {withLoad(
                 R"("readings":[{"parameter":"temperature","happenedAt":"2031-03-04T06:00Z","celsius":)"
                 + std::string(number) + "}]"),
             good});
    }
    for (const char* flag : {"true", "false", "tru", "True", "TRUE", "falsey", "t"}) {
        const std::string word(flag);
        cases.push_back(
            {withItem("\"internalVisible\":" + word), word == "true" || word == "false"});
    }
    const std::string good = withLoad("");
    cases.push_back({good + " \t\r\n", true});
    cases.push_back({good + " x", false});
    cases.push_back({good + good, false});
    cases.push_back({good + ",", false});
    cases.push_back({withLoad(R"("lot":"L1",)"), false});
    cases.push_back({withLoad(R"(,"lot":"L1")"), false});
    cases.push_back({withLoad(R"("lot""L1")"), false});
    cases.push_back({withLoad(R"("lot":"L1" "clock":"facility")"), false});
    cases.push_back({withLoad(R"(lot:"L1")"), false});
    cases.push_back({withLoad(R"("items":[,])"), false});
    cases.push_back({withLoad(R"("items":[{"label":"I1"},])"), false});
    cases.push_back({withLoad(R"("items":[{"label":"I1"} {"label":"I2"}])"), false});
    cases.push_back({withLoad(R"("items":[)"), false});
    cases.push_back({withLoad("/* no comments */"), false});
    cases.push_back({"{" + good, false});
    cases.push_back({good.substr(0, good.size() - 1), false});
    return cases;
}

TEST(EvidenceJson, TakesWhatTheGrammarTakes)
{
    for (const JsonCase& c : jsonCases()) {
        EXPECT_EQ(nlohmann::json::accept(c.text), c.good) << "the case itself is wrong: " << c.text;
        const auto result = readText(c.text);
        EXPECT_EQ(std::holds_alternative<EvidenceRecord>(result), c.good) << c.text;
        if (const auto* error = std::get_if<ReadError>(&result)) {
            ASSERT_FALSE(error->problems.empty()) << c.text;
            EXPECT_FALSE(error->problems.front().message.empty());
        }
    }
}

TEST(EvidenceJson, EveryEscapeIsDecodedAlsoWhereItsCharacterIsRefused)
{
    const std::pair<const char*, const char*> rows[] = {
        {R"(\b)", "U+0008"},     {R"(\f)", "U+000C"},     {R"(\r)", "U+000D"},
        {R"(\u0000)", "U+0000"}, {R"(\u001b)", "U+001B"}, {R"(\u007f)", "U+007F"},
    };
    for (const auto& [escape, says] : rows) {
        EXPECT_THAT(mustRefuse(withTop("\"comment\":\"ab" + std::string(escape) + "\"")).message,
                    HasSubstr("character 3 is " + std::string(says)))
            << escape;
    }
    EXPECT_EQ(mustRead(withTop(R"("comment":"\" \\ \/ \n \t")")).comment, "\" \\ / \n \t");
}

TEST(EvidenceJson, SaysWhereAndWhat)
{
    const ReadProblem value = mustRefuse(withLoad(R"("start":,"end":1)"));
    EXPECT_EQ(value.pointer, "/load/start");
    const ReadError accent = mustRefuseAll("{\"\xC3\xA9\xC3\xA9\":1,}");
    EXPECT_EQ(accent.problems.at(0).pointer, "/\xC3\xA9\xC3\xA9");
    EXPECT_EQ(accent.problems.at(1).place, (TextPlace{1, 8})) << "characters, not bytes";
    const ReadProblem bytes = mustRefuse(withLoad("\"lot\":\"\xE9\""));
    EXPECT_EQ(bytes.pointer, "/load/lot");
    EXPECT_THAT(bytes.message, HasSubstr("UTF-8"));
    EXPECT_THAT(mustRefuse(withLoad("\"lot\":\"L1\nL2\"")).message, HasSubstr("not closed"));
    EXPECT_THAT(mustRefuse(withLoad("\"lot\":\"L1\tL2\"")).message, HasSubstr("a tab"));
}

TEST(EvidenceJson, OtherEncodings)
{
    const std::string good = withLoad("");
    EXPECT_THAT(mustRefuse("\xEF\xBB\xBF" + good).message, HasSubstr("byte order mark"));
    EXPECT_THAT(mustRefuse("\xFF\xFE" + good).message, HasSubstr("UTF-16"));
    EXPECT_THAT(mustRefuse("\xFE\xFF" + good).message, HasSubstr("UTF-16"));
    std::string little;
    std::string big;
    for (const char c : good) {
        (little += c) += '\0';
        (big += '\0') += c;
    }
    EXPECT_THAT(mustRefuse(little).message, HasSubstr("UTF-16"));
    EXPECT_THAT(mustRefuse(big).message, HasSubstr("UTF-16"));
    EXPECT_THAT(mustRefuse(good + '\0').message, HasSubstr("byte of value 0"));
    EXPECT_THAT(mustRefuse("").message, HasSubstr("empty"));
    EXPECT_THAT(mustRefuse(" \n").message, HasSubstr("empty"));
}

TEST(EvidenceJson, ListsInListsAreRefusedAtTheFirst)
{
    const ReadError error = mustRefuseAll(withLoad("\"items\":" + std::string(100'000, '[')));
    EXPECT_EQ(error.problems.front().pointer, "/load/items/0");
    EXPECT_THAT(error.problems.back().message, HasSubstr("more than 64"));
}

} // namespace

} // namespace loadwarden::tests
