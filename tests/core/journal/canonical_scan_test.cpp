// The scanner of the canonical form against a general-purpose JSON library: what it accepts is what
// that library reads and canonicalJson() writes back byte for byte, and nothing else.
#include "core/journal/canonical_json.h"
#include "core/journal/canonical_scan.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace loadwarden {
namespace {

bool isCanonical(const std::string& text)
{
    const auto value = nlohmann::json::parse(text, nullptr, false);
    try {
        return !value.is_discarded() && canonicalJson(value) == text;
    } catch (const nlohmann::json::exception&) {
        return false;
    }
}

bool isTaken(std::string_view text)
{
    CanonicalScan scan(text);
    std::string_view value;
    return scan.takeValue(value) && scan.rest().empty() && value == text;
}

TEST(CanonicalScan, AgreesWithALibraryOnEveryTextThatIsOneStepAway)
{
    const std::string texts[]{
        R"({"a":[1,"2.5",-7,[],{}],"b":{"c":true,"d":null},"seen":"unchanged"})",
        R"({"":0,"note":"said \"again\"\n\t\r and \\ more\u0001\u001f","z":9007199254740992})",
        "[\"\xC3\xA9\xE2\x82\xAC\xF0\x9F\x98\x80\x7F\",-9007199254740992,false]",
        R"("x")",
        "-10",
        "{}",
    };
    const std::string pieces[]{"\"",
                               "\\",
                               "{",
                               "}",
                               "[",
                               "]",
                               ":",
                               ",",
                               "0",
                               "1",
                               "-",
                               ".",
                               "e",
                               "a",
                               "b",
                               " ",
                               "\n",
                               "\x7F",
                               "u",
                               "A",
                               "null",
                               "\xC3",
                               "\x80",
                               "\xED\xA0\x80",
                               "\t",
                               "\x1F",
                               "/",
                               "\xC0\xAF",
                               "\xF4\x90\x80\x80"};
    int accepted = 0;
    int refused = 0;
    const auto compare = [&](const std::string& text) {
        ASSERT_EQ(isTaken(text), isCanonical(text)) << text;
        ++(isTaken(text) ? accepted : refused);
    };
    for (const std::string& text : texts) {
        ASSERT_TRUE(isCanonical(text)) << text;
        compare(text);
        for (std::size_t at = 0; at <= text.size(); ++at) {
            for (const std::string& piece : pieces) {
                compare(std::string(text).insert(at, piece));
                if (at < text.size()) {
                    compare(std::string(text).replace(at, 1, piece));
                }
            }
            if (at < text.size()) {
                compare(std::string(text).erase(at, 1));
            }
        }
    }
    EXPECT_GT(accepted, 500);
    EXPECT_GT(refused, 5'000);
}

TEST(CanonicalScan, AgreesOnHowDeepAValueMayBe)
{
    for (std::size_t depth = 1; depth < 40; ++depth) {
        const std::string text = std::string(depth, '[') + std::string(depth, ']');
        EXPECT_EQ(isTaken(text), isCanonical(text)) << depth;
    }
    EXPECT_FALSE(isTaken(std::string(1'000'000, '[')));
}

TEST(CanonicalScan, AgreesOnEveryEscape)
{
    for (unsigned code = 0; code < 0x100; ++code) {
        for (const char* digits : {"0123456789abcdef", "0123456789ABCDEF"}) {
            const std::string text =
                std::string("\"\\u00") + digits[code >> 4U] + digits[code & 0xFU] + '"';
            EXPECT_EQ(isTaken(text), isCanonical(text)) << text;
        }
        const std::string text = std::string("\"\\") + static_cast<char>(code) + '"';
        EXPECT_EQ(isTaken(text), isCanonical(text)) << text;
    }
}

TEST(CanonicalScan, SaysWhatAStringSays)
{
    for (const std::string said :
         {"", "plain", "a\"b\\c\n\r\t\x01 d", "\xC3\xA9\xF0\x9F\x98\x80"}) {
        const std::string text = canonicalJson(said);
        CanonicalScan scan(text);
        std::string value = "what was there";
        EXPECT_TRUE(scan.takeString(value));
        EXPECT_EQ(value, said);
        CanonicalScan again(text);
        std::string_view part;
        EXPECT_TRUE(again.takeString(part, value));
        EXPECT_EQ(part, said);
        EXPECT_TRUE(again.rest().empty());
    }
}

} // namespace
} // namespace loadwarden
