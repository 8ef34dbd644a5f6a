#include "core/words/say_need.h"
#include "tests/core/words/well_said.h"

#include <gtest/gtest.h>

#include <set>

namespace loadwarden {
namespace {

using test_words::hasMarker;
using test_words::isSentence;

Need fullNeed(int kind, std::size_t findings)
{
    return {.kind = static_cast<NeedKind>(kind),
            .cycle = "ld-1",
            .lot = "LOT",
            .sterilizer = "sz-1",
            .subject = "bv-1",
            .name = "NAME",
            .at = Instant{1'930'000'000'000},
            .findings =
                std::vector<Finding>(findings, Finding{.key = Key::biDue, .subject = "bv-1"})};
}

TEST(SayNeed, EveryKindHasAHeadingASentenceAndAnAction)
{
    std::set<std::string> headings;
    for (int kind = 0; kind <= static_cast<int>(NeedKind::lotExpires); ++kind) {
        for (const std::size_t findings : {std::size_t{1}, std::size_t{2}, std::size_t{5}}) {
            const NeedSaid said = say(fullNeed(kind, findings), {});
            EXPECT_TRUE(isSentence(said.says)) << kind << ' ' << said.says;
            EXPECT_FALSE(said.what.empty() || said.what.ends_with('.')) << kind;
            EXPECT_FALSE(said.action.empty() || said.action.ends_with('.')) << kind;
            EXPECT_FALSE(hasMarker(said.what + said.action));
            headings.insert(said.what);
        }
    }
    EXPECT_EQ(headings.size(), static_cast<std::size_t>(NeedKind::lotExpires) + 1);
}

TEST(SayNeed, SaysHowManyReasonsThereAre)
{
    const int review = static_cast<int>(NeedKind::review);
    EXPECT_NE(say(fullNeed(review, 2), {}).says.find("one more"), std::string::npos);
    EXPECT_NE(say(fullNeed(review, 5), {}).says.find("4 more"), std::string::npos);
}

TEST(SayNeed, SaysWhereAThingIsAndNotItsId)
{
    Need need = fullNeed(static_cast<int>(NeedKind::biologicalComing), 1);
    need.parts = {{"bv-1", "A"}};
    EXPECT_NE(say(need, {}).says.find("(BI) in PCD A is due"), std::string::npos)
        << say(need, {}).says;
    need.parts = {{"bv-1", ""}};
    EXPECT_NE(say(need, {}).says.find("(BI) in the PCD is due"), std::string::npos);
    need.findings = {{.key = Key::pcdUnclear, .subject = "pd-1"}};
    need.parts = {{"pd-1", "A"}};
    EXPECT_NE(say(need, {}).says.find("(PCD) A was read"), std::string::npos)
        << say(need, {}).says;
}

TEST(SayNeed, AnUnclearAnswerAsksForAnotherReader)
{
    Need need = fullNeed(static_cast<int>(NeedKind::reading), 1);
    EXPECT_EQ(say(need, {}).action, "Read them");
    need.findings = {{.key = Key::pcdUnclear, .subject = "pd-1"}};
    EXPECT_EQ(say(need, {}).action, "Have it read again");
}

TEST(SayNeed, OfAGoodLoadSaysHowManyItemsStayBehind)
{
    Need need = fullNeed(static_cast<int>(NeedKind::signature), 0);
    EXPECT_EQ(say(need, {}).says.find("stay behind"), std::string::npos);
    need.behind = 2;
    EXPECT_NE(say(need, {}).says.find("stay behind: 2."), std::string::npos) << say(need, {}).says;
}

} // namespace
} // namespace loadwarden
