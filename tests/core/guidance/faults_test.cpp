// One fault planted at a time into files that read well: each is found, with its file and line.

#include "guidance_support.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace loadwarden {
namespace {

using namespace testing;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

GuidanceFile house(std::string text, const std::string& place = "en/house-key.toml")
{
    return {place, "folder/" + place, std::move(text)};
}

TEST(Faults, WithoutOneNothingIsWrong)
{
    EXPECT_THAT(errorsOf({house(houseTopic("house-key"))}), IsEmpty());
}

struct Fault {
    const char* name;
    const char* what; ///< replaced
    const char* with;
    const char* lineOf; ///< the error names the line of this text of the faulty file
    const char* message;
};

const Fault faults[] = {
    {"unknownKey", "owner = ", "ovner = \"a\"\nowner = ", "ovner", "is not known here"},
    {"missingKey", "why = \"It is the house's own.\"\n", "", "topic_version", "is missing"},
    {"emptyText", "\"In the cupboard beside the door.\"", "\"  \"", "short_answer",
     "must not be empty"},
    {"emptyStep", "[\"Ask at the desk.\"]", "[\"Ask.\",\n  \"\"]", "  \"\"]", "must not be empty"},
    {"stepTwice", "[\"Ask at the desk.\"]", "[\"Ask.\",\n  \"Ask.\"]", "  \"Ask.\"]",
     "stands in this list already"},
    {"noList", "[\"Ask at the desk.\"]", "\"Ask at the desk.\"", "do_now", "must be a list"},
    {"noText", "\"the desk\"", "7", "owner", "must be a text in quotes"},
    {"dateAsText", "2031-03-04", "\"2031-03-04\"", "review_by", "without quotes"},
    {"dateThatIsNone", "2031-03-04", "2031-02-30", "review_by", "cannot be read as TOML"},
    {"dateTooFar", "2031-03-04", "2331-03-04", "review_by", "2000 to 2099"},
    {"version", "topic_version = 1", "topic_version = 2", "topic_version", "whole number"},
    {"otherId", "id = \"house-key\"", "id = \"house-kay\"",
     "id =", "must be as the file is called"},
    {"idWithBlank", "id = \"house-key\"", "id = \"house key\"", "id =", "may hold only"},
    {"relatedThatIsNone", "\"wet-packs\"", "\"wet-pax\"", "related",
     "there is no topic \"wet-pax\""},
    {"relatedToItself", "\"wet-packs\"", "\"house-key\"", "related", "names the topic itself"},
    {"noSourceAtAll",
     "[[source]]\ntext = \"common practice, no source\"\nconfidence = "
     "\"common-practice\"\n",
     "", "topic_version", "[[source]]"},
    {"practiceWithOtherWords", "common practice, no source", "common practice",
     "text =", "must be exactly"},
    {"practiceCalledSeen", "\"common-practice\"", "\"seen\"",
     "text =", "needs the confidence common-practice"},
    {"confidenceThatIsNone", "\"common-practice\"", "\"sure\"", "confidence", "must be one of"},
    {"keyTwice", "owner = ", "owner = \"a\"\nowner = ", "owner = \"the desk\"", "stands twice"},
    {"openQuote", "\"the desk\"", "\"the desk", "owner", "cannot be read as TOML"},
    {"questionOfAnother", "Cupboard of house-key", "Wet load, what do we do?", "Wet load",
     "is asked of the topic wet-packs too"},
    {"pictureThatIsNone", "owner = ", "picture = \"card\"\nowner = ", "picture", "must be one of"},
    {"controlCharacter", "beside the door", "beside\\u0007 the door", "short_answer", "U+0007"},
};

class OneFault : public ::testing::TestWithParam<Fault> {};

TEST_P(OneFault, IsFoundWithFileAndLine)
{
    const Fault& fault = GetParam();
    const std::string text = replaced(houseTopic("house-key"), fault.what, fault.with);
    const std::vector<TomlError> errors = errorsOf({house(text)});
    ASSERT_THAT(errors, SizeIs(1)) << (errors.empty() ? "" : textOf(errors[1]));
    EXPECT_EQ(errors[0].file, "folder/en/house-key.toml");
    EXPECT_EQ(errors[0].line, testing::lineOf(text, fault.lineOf));
    EXPECT_THAT(textOf(errors[0]), HasSubstr(fault.message));
}

INSTANTIATE_TEST_SUITE_P(Faults, OneFault, ::testing::ValuesIn(faults),
                         [](const auto& info) { return std::string(info.param.name); });

TEST(Faults, OtherEncodingIsSaidWithItsLine)
{
    const std::string text = houseTopic("house-key");
    const std::string latin = replaced(text, "beside", "besid\xE9");
    auto errors = errorsOf({house(latin)});
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].line, testing::lineOf(text, "short_answer"));
    EXPECT_THAT(errors[0].message, HasSubstr("UTF-8"));

    std::string wide = "\xFF\xFE"; // UTF-16
    for (const char c : text) {
        wide += c;
        wide += '\0';
    }
    errors = errorsOf({house(wide)});
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_THAT(errors[0].message, HasSubstr("UTF-8"));
}

TEST(Faults, AllOfAFileAndOfAllFilesAreSaidAtOnce)
{
    std::string text = houseTopic("house-key");
    text = replaced(text, "owner = ", "ovner = ");
    text = replaced(text, "2031-03-04", "7");
    text = replaced(text, "\"Ask at the desk.\"", "\"\"");
    const std::string other = replaced(houseTopic("other"), "\"wet-packs\"", "\"nothing\"");
    const auto errors = errorsOf({house(text), house(other, "en/other.toml")});
    std::vector<int> lines;
    for (const TomlError& error : errors) {
        lines.push_back(error.file == "folder/en/house-key.toml" ? error.line : -error.line);
    }
    EXPECT_THAT(
        lines, ElementsAre(1, testing::lineOf(text, "do_now"), testing::lineOf(text, "ovner"),
                           testing::lineOf(text, "review_by"), -testing::lineOf(other, "related")));
}

std::string withCase(const std::string& lines)
{
    return houseTopic("house-key") + "\n[[case]]\ntells = \"Wet.\"\n" + lines;
}

struct CaseFault {
    const char* name;
    const char* lines;
    const char* lineOf;
    const char* message;
};

const CaseFault caseFaults[] = {
    {"noSuchRule",
     "rule = \"wetness\"\nevidence = \"one-wet.json\"\nexpected = \"reprocess\"\nkeys = []\n",
     "rule", "is no rule"},
    {"noSuchKey",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"quarantine\"\nkeys = "
     "[\"item.soggy\"]\n",
     "keys", "item.soggy is no key"},
    {"keyOfAnotherRule",
     "rule = \"internal\"\nevidence = \"one-wet.json\"\nexpected = \"release\"\nkeys = "
     "[\"item.wet\"]\n",
     "keys", "is a key of the rule package"},
    {"noSuchEvidence",
     "rule = \"package\"\nevidence = \"dry.json\"\nexpected = \"reprocess\"\nkeys = []\n", "rule",
     "there is no file evidence/dry.json"},
    {"otherVerdict",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"release\"\nitem = "
     "\"IT-2\"\nkeys = [\"item.wet\"]\n",
     "rule", "the rules say reprocess, not release"},
    {"otherKey",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"reprocess\"\nitem = "
     "\"IT-2\"\nkeys = [\"item.torn\"]\n",
     "rule", "the rules do not say item.torn"},
    {"keyOfAnotherItem",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"release\"\nitem = "
     "\"IT-1\"\nkeys = [\"item.wet\"]\n",
     "rule", "the rules do not say item.wet"},
    {"noSuchItem",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"reprocess\"\nitem = "
     "\"IT-9\"\nkeys = []\n",
     "rule", "there is no item IT-9"},
    {"noSuchResult",
     "rule = \"package\"\nevidence = \"one-wet.json\"\nexpected = \"discard\"\nkeys = []\n",
     "expected", "must be one of"},
};

class OneCaseFault : public ::testing::TestWithParam<CaseFault> {};

TEST_P(OneCaseFault, IsFoundWithFileAndLine)
{
    const std::string text = withCase(GetParam().lines);
    const auto errors = errorsOf({house(text)});
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].file, "folder/en/house-key.toml");
    EXPECT_EQ(errors[0].line, testing::lineOf(text, GetParam().lineOf));
    EXPECT_THAT(textOf(errors[0]), HasSubstr(GetParam().message));
}

INSTANTIATE_TEST_SUITE_P(Faults, OneCaseFault, ::testing::ValuesIn(caseFaults),
                         [](const auto& info) { return std::string(info.param.name); });

TEST(Faults, EvidenceThatCannotBeDecidedOnIsSaidAtTheTopic)
{
    const std::string text = withCase("rule = \"package\"\nevidence = \"mine.json\"\n"
                                      "expected = \"reprocess\"\nkeys = []\n");
    const auto errorsWith = [&](std::string evidence) {
        return errorsOf({house(text), house(std::move(evidence), "evidence/mine.json")});
    };
    EXPECT_THAT(textOf(errorsWith("{").at(0)), HasSubstr("nothing can be decided: line 1"));
    const std::string wet = fileAt("evidence/one-wet.json").text;
    const std::string at = wet.substr(wet.find(" \"decideAt\""),
                                      wet.find(" \"facility\"") - wet.find(" \"decideAt\""));
    const auto errors = errorsWith(replaced(wet, at, ""));
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].line, testing::lineOf(text, "rule"));
    EXPECT_THAT(textOf(errors[0]), HasSubstr("it states no decideAt"));
}

TEST(Faults, FilesThatBelongNowhereAreSaid)
{
    EXPECT_THAT(textOf(errorsOf({house("", "topic.toml")}).at(0)),
                HasSubstr("stands where no guidance is looked for"));
    EXPECT_THAT(textOf(errorsOf({house("", "en/more/topic.toml")}).at(0)),
                HasSubstr("stands where no guidance is looked for"));
    EXPECT_THAT(textOf(errorsOf({house("", "English/topic.toml")}).at(0)),
                HasSubstr("is neither a topic"));
    EXPECT_THAT(textOf(errorsOf({house("{}", "evidence/unused.json")}).at(0)),
                HasSubstr("is used by no topic"));
    EXPECT_THAT(textOf(errorsOf({house("{}", "evidence/one-wet.json")}).at(0)),
                HasSubstr("the program has evidence of this name"));
}

TEST(Faults, OfWordsAreFound)
{
    const std::string good = "words_version = 1\nordinary = [\"aye\"]\n\n[[same]]\n"
                             "words = [\"barn\", \"store room\"]\n";
    EXPECT_THAT(errorsOf({house(good, "words/en.toml")}), IsEmpty());
    const auto errors =
        errorsOf({house(good + "\n[[same]]\nwords = [\"barns\", \"shed\"]\n", "words/en.toml")});
    ASSERT_THAT(errors, SizeIs(1));
    EXPECT_EQ(errors[0].line, 8);
    EXPECT_THAT(textOf(errors[0]), HasSubstr("stands in another group already"));
    EXPECT_THAT(textOf(errorsOf({house(good, "words/english.toml")}).at(0)),
                HasSubstr("must be called by its language"));
}

} // namespace
} // namespace loadwarden
