// A check that never changes, and what is made of its answers.
#include "core/indicators/chemical.h"
#include "core/indicators/reading_result.h"
#include "tests/support/ask_python.h"

#include <gtest/gtest.h>

#include <array>
#include <random>
#include <set>

namespace loadwarden {
namespace {

std::vector<CheckProduct> threeProducts()
{
    CheckProduct front{.id = "f", .name = "F", .type = 5, .response = Response::movingFront};
    front.directions.emplace();
    front.directions->stripTenthsMm = 200;
    front.directions->boundaryTenthsMm = 120;
    return {front,
            {.id = "c", .name = "C", .type = 1, .response = Response::colour, .directions = {}},
            {.id = "s", .name = "S", .type = 2, .response = Response::sheet, .directions = {}}};
}

std::string oneLine(const Drawn& each)
{
    std::string line = each.product;
    for (const int number : {static_cast<int>(each.truth), each.front, each.boundary, each.changed,
                             static_cast<int>(each.pattern)}) {
        line += ' ' + std::to_string(number);
    }
    return line;
}

std::vector<CheckAnswer> rightAnswers(const std::vector<Drawn>& drawn)
{
    std::vector<CheckAnswer> answers;
    for (const Drawn& each : drawn) {
        answers.push_back({readAsOf(each.truth), 1'500});
    }
    return answers;
}

CheckResult answered(const std::vector<Drawn>& drawn, std::vector<CheckAnswer> answers)
{
    return resultOf(7, drawn, std::move(answers)).value();
}

// Source: C++ standard, [rand.predef]: the 10000th of a default-constructed mt19937_64.
TEST(TheEngine, IsThatOfTheStandard)
{
    std::mt19937_64 engine;
    engine.discard(9'999);
    EXPECT_EQ(engine(), 9'981'545'732'273'789'042U);
}

// Made once and kept: a check that somebody took must be the same years later.
TEST(ACheck, OfASeedNeverChanges)
{
    std::string all;
    for (const Drawn& each : drawCheck(threeProducts(), 20'310'304)) {
        all += oneLine(each) + '\n';
    }
    EXPECT_EQ(all, R"(s 6 0 0 0 0
f 2 551 600 0 7
s 6 0 0 0 0
c 4 0 0 324 7
s 8 0 0 0 2
f 2 187 600 0 7
f 1 600 600 0 7
f 2 549 600 0 7
c 5 0 0 0 7
f 0 996 600 0 7
s 8 0 0 0 3
f 0 629 600 0 7
c 4 0 0 610 7
s 5 0 0 0 5
f 0 655 600 0 7
c 3 0 0 1000 7
c 3 0 0 1000 7
s 7 0 0 0 1
c 5 0 0 0 7
c 3 0 0 1000 7
)");
}

TEST(ACheck, OfAnotherSeedIsAnother)
{
    std::set<std::string> different;
    for (std::uint64_t seed = 0; seed < 50; ++seed) {
        std::string all;
        for (const Drawn& each : drawCheck(threeProducts(), seed)) {
            all += oneLine(each) + '\n';
        }
        different.insert(all);
    }
    EXPECT_EQ(different.size(), 50U);
}

TEST(ACheck, DrawsNoFrontThatHasNoRoomBesideItsBoundary)
{
    CheckProduct narrow{.id = "n", .response = Response::movingFront};
    narrow.directions.emplace();
    narrow.directions->stripTenthsMm = 1'000;
    narrow.directions->boundaryTenthsMm = 981;
    EXPECT_FALSE(canBeDrawn(narrow));
    EXPECT_TRUE(drawCheck({narrow}, 1).empty());
    narrow.directions->boundaryTenthsMm = 980;
    EXPECT_TRUE(canBeDrawn(narrow));
}

TEST(TheResult, IsRightWhereEveryAnswerIs)
{
    const std::vector<Drawn> drawn = drawCheck(threeProducts(), 3);
    const CheckResult result = answered(drawn, rightAnswers(drawn));
    EXPECT_EQ(result.right, 20);
    EXPECT_TRUE(result.misread.empty());
    EXPECT_EQ(result.tookMs, 20 * 1'500);
    EXPECT_EQ(result.seed, 7U);
}

TEST(TheResult, TellsDangerousFromCostlyMistakesWithTheirRule)
{
    const std::vector<Drawn> drawn = drawCheck(threeProducts(), 3);
    std::vector<CheckAnswer> answers;
    std::int64_t passes = 0;
    for (const Drawn& each : drawn) {
        passes += isGoodAnswer(each.truth) ? 1 : 0;
        answers.push_back({isGoodAnswer(each.truth) ? ReadAs::reject : ReadAs::accept, 0});
    }
    answers.front().readAs = ReadAs::unclear;
    const bool isFirstGood = isGoodAnswer(drawn.front().truth);
    const CheckResult result = answered(drawn, answers);
    EXPECT_EQ(result.right, 0);
    EXPECT_EQ(result.notSure, 1);
    EXPECT_EQ(result.rejectedWhatPasses, passes - (isFirstGood ? 1 : 0));
    EXPECT_EQ(result.acceptedWhatFails, 20 - passes - (isFirstGood ? 0 : 1));
    ASSERT_EQ(result.misread.size(), 20U);
    EXPECT_EQ(result.misread.front().mark, AnswerMark::notSure);
    for (const Misread& each : result.misread) {
        EXPECT_EQ(each.rule, ruleOf(drawn[each.drawn].truth));
    }
}

TEST(TheResult, IsNoneOfACheckThatWasNotFinished)
{
    const std::vector<Drawn> drawn = drawCheck(threeProducts(), 3);
    std::vector<CheckAnswer> answers = rightAnswers(drawn);
    answers.pop_back();
    EXPECT_FALSE(resultOf(7, drawn, answers));
    EXPECT_FALSE(resultOf(7, {}, {}));
}

TEST(TheRule, IsOneOfItsOwnForEachThingThatIsSeenOnAnIndicator)
{
    std::set<ReadingRule> rules;
    for (int i = 0; i <= static_cast<int>(Seen::unclear); ++i) {
        const auto seen = static_cast<Seen>(i);
        if (isGoodAnswer(seen) || isBadAnswer(seen) || seen == Seen::unclear) {
            EXPECT_TRUE(rules.insert(ruleOf(seen)).second) << i;
        }
    }
    EXPECT_EQ(rules.size(), std::size(everyReadingRule));
}

// Source: the first worked example in the article "Cohen's kappa" of Wikipedia, 20, 5, 10 and 15 of
// 50, whose kappa is 0.4: the same shares in a check of ten.
TEST(Agreement, OfTwoReadersIsCohens)
{
    const std::vector<Drawn> drawn(10, Drawn{.truth = Seen::unchanged});
    std::vector<CheckAnswer> first(10, {ReadAs::accept, 0});
    std::vector<CheckAnswer> second = first;
    for (const std::size_t i : {5U, 6U, 7U, 8U, 9U}) {
        first[i].readAs = ReadAs::reject;
    }
    for (const std::size_t i : {4U, 7U, 8U, 9U}) {
        second[i].readAs = ReadAs::reject;
    }
    const auto agreement = agreementOf({answered(drawn, first), answered(drawn, second)});
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->readers, 2U);
    EXPECT_EQ(agreement->alike, 7);
    EXPECT_NEAR(agreement->kappa.value(), 0.4, 1e-12);
}

TEST(Agreement, OfThreeReadersIsFleiss)
{
    const std::vector<Drawn> drawn = drawCheck(threeProducts(), 11);
    std::vector<CheckAnswer> good = rightAnswers(drawn);
    std::vector<CheckAnswer> other = good;
    other[0].readAs = ReadAs::unclear;
    other[1].readAs = other[1].readAs == ReadAs::accept ? ReadAs::reject : ReadAs::accept;
    const std::vector<CheckResult> readers = {answered(drawn, good), answered(drawn, good),
                                              answered(drawn, other)};
    const auto agreement = agreementOf(readers);
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->alike, 18);
    // A library that others wrote, asked for the same answers.
    std::string asked = "fleiss " + std::to_string(drawn.size()) + '\n';
    for (std::size_t i = 0; i < drawn.size(); ++i) {
        std::array<int, 3> said{};
        for (const CheckResult& reader : readers) {
            ++said[static_cast<std::size_t>(reader.answers[i].readAs)];
        }
        for (const int count : said) {
            asked += std::to_string(count) + ' ';
        }
        asked += '\n';
    }
    const auto theirs = support::askPython("indicators/agreement_statsmodels.py", asked);
    ASSERT_EQ(theirs.size(), 1U);
    EXPECT_NEAR(agreement->kappa.value(), std::stod(theirs.front()), 1e-12);
}

TEST(Agreement, IsNoneWithoutTheSameCheck)
{
    const std::vector<Drawn> one = drawCheck(threeProducts(), 1);
    const std::vector<Drawn> two = drawCheck(threeProducts(), 2);
    const CheckResult first = answered(one, rightAnswers(one));
    EXPECT_FALSE(agreementOf({}));
    EXPECT_FALSE(agreementOf({first}));
    EXPECT_FALSE(agreementOf({first, answered(two, rightAnswers(two))}));
    EXPECT_EQ(agreementOf({first, first})->kappa, 1.0);
}

} // namespace
} // namespace loadwarden
