#include "core/desk/choices.h"
#include "core/desk/competence.h"
#include "core/desk/indicator_answer.h"
#include "core/desk/policy_now.h"
#include "core/exchange/policy_reader.h"
#include "core/words/say_indicator_answer.h"
#include "tests/core/desk/day_support.h"

#include <gmock/gmock.h>

// One indicator answered without a load, and how well readers read.

namespace loadwarden::testing {
namespace {

class IndicatorDesk : public ::testing::Test {
protected:
    [[nodiscard]] std::optional<ReadableLot> lotOf(Response response)
    {
        ReadSnapshot snapshot(department.office().connection());
        for (const ReadableLot& each : readableLots(snapshot)) {
            if (each.product.response == response) {
                return each;
            }
        }
        return std::nullopt;
    }
    [[nodiscard]] IndicatorAnswer answer(const ReadableLot& lot, Seen seen,
                                         std::optional<IndicatorUsedAt> place = {},
                                         Method method = Method::steam)
    {
        return answerIndicator(lot, seen, method, place, defaultPolicy(), today());
    }
    [[nodiscard]] Date today()
    {
        return department.office().zone().dateOf(department.office().now());
    }

    WorkingDepartment department;
};

// That a front need only enter the zone: common practice, no source; makers' directions come first.
TEST_F(IndicatorDesk, AFrontNeedOnlyHaveEnteredTheZone)
{
    ReadingDirections directions;
    directions.stripTenthsMm = 400;
    directions.boundaryTenthsMm = 300;
    EXPECT_EQ(seenAt(directions, 310), Seen::frontInAcceptZone);
    EXPECT_EQ(seenAt(directions, 400), Seen::frontInAcceptZone);
    EXPECT_EQ(seenAt(directions, 300), Seen::frontOnBoundary);
    EXPECT_EQ(seenAt(directions, 290), Seen::frontShortOfBoundary);
    EXPECT_EQ(seenAt(directions, 0), Seen::frontShortOfBoundary);
    EXPECT_EQ(seenAt(directions, 401), std::nullopt) << "outside the strip";
    EXPECT_EQ(seenAt(directions, -1), std::nullopt);
    EXPECT_EQ(seenAt({}, 300), std::nullopt) << "nobody said where the zone begins";

    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    EXPECT_EQ(answer(*lot, Seen::frontInAcceptZone).state, ChemicalState::accepted);
    EXPECT_EQ(answer(*lot, Seen::frontOnBoundary).state, ChemicalState::rejected);
    EXPECT_EQ(answer(*lot, Seen::frontShortOfBoundary).state, ChemicalState::rejected);
    EXPECT_EQ(answer(*lot, Seen::unclear).state, ChemicalState::unclear);
}

TEST_F(IndicatorDesk, WhatDoesNotCountSaysWhy)
{
    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    const auto causeOf = [&](const ReadableLot& changed, Seen seen = Seen::frontInAcceptZone,
                             Method method = Method::steam) {
        const IndicatorAnswer said = answer(changed, seen, {}, method);
        EXPECT_EQ(said.state, ChemicalState::invalid);
        EXPECT_FALSE(say(said, seen, {}, {}).why.empty());
        return said.cause;
    };
    ReadableLot expired = *lot;
    expired.number.expires = today() - 1;
    EXPECT_EQ(causeOf(expired), Cause::lotExpired);
    ReadableLot undated = *lot;
    undated.number.expires.reset();
    EXPECT_EQ(causeOf(undated), Cause::lotWithoutDate);
    ReadableLot recalled = *lot;
    recalled.number.recalled = true;
    EXPECT_EQ(causeOf(recalled), Cause::lotRecalled);
    EXPECT_EQ(causeOf(*lot, Seen::frontInAcceptZone, Method::ethyleneOxide), Cause::method);
    EXPECT_EQ(causeOf(*lot, Seen::endColourReached), Cause::otherResponse);
    EXPECT_EQ(answer(recalled, Seen::frontOnBoundary).state, ChemicalState::rejected)
        << "a rejection is one whatever else is wrong";
}

TEST_F(IndicatorDesk, ATypeIsForItsPlace)
{
    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    EXPECT_EQ(answer(*lot, Seen::frontInAcceptZone, IndicatorUsedAt::outside).cause, Cause::type);
    EXPECT_EQ(answer(*lot, Seen::frontInAcceptZone, IndicatorUsedAt::pcd).state,
              ChemicalState::accepted);
}

TEST_F(IndicatorDesk, ALotIsFoundByItsNumberAndARecallIsShown)
{
    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    department.record(department.second(), LotRecalled{"notice"}, {lot->lot, lot->product.id});
    ReadSnapshot snapshot(department.office().connection());
    const auto found = readableLots(snapshot, " " + lot->number.number);
    ASSERT_EQ(found.size(), 1U);
    EXPECT_TRUE(found[0].number.recalled);
    EXPECT_TRUE(readableLots(snapshot, "none").empty());
    const Choices choices = choicesOf(snapshot);
    EXPECT_FALSE(choices.lot(lot->lot)->fits(Method::steam)) << "it is offered to no load";
}

TEST_F(IndicatorDesk, TheNewestDirectionsOfAProductCount)
{
    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    EXPECT_FALSE(lot->directions);
    for (const char* const text : {"first", "second"}) {
        department.record(department.lead(), DirectionsRecorded{{.text = text}},
                          {lot->product.id});
    }
    ASSERT_TRUE(lotOf(Response::movingFront)->directions);
    EXPECT_EQ(lotOf(Response::movingFront)->directions->text, "second");
}

TEST_F(IndicatorDesk, ReadersAreComparedInTheCheckThatTheyBothTook)
{
    const auto lot = lotOf(Response::movingFront);
    ASSERT_TRUE(lot);
    const auto take = [&](const SignedIn& who, std::int64_t number, const std::string& id,
                          std::vector<ReadAs> answers) {
        ReadingCheckTaken taken{.number = number, .drawings = {}};
        const std::array drawn = {Seen::frontInAcceptZone, Seen::frontOnBoundary,
                                  Seen::frontInAcceptZone, Seen::frontShortOfBoundary};
        for (std::size_t i = 0; i < answers.size(); ++i) {
            taken.drawings.push_back({lot->product.id, drawn.at(i), answers[i], 1000});
        }
        department.record(who, taken, {id});
    };
    using enum ReadAs;
    take(department.operating(), 1, "rc-1", {accept, reject, accept, reject});
    {
        ReadSnapshot one(department.office().connection());
        EXPECT_FALSE(agreementOfReaders(one)) << "one reader agrees with nobody";
    }
    take(department.second(), 1, "rc-2", {accept, accept, reject, reject});
    take(department.second(), 2, "rc-3", {accept, reject, accept, accept});
    ReadSnapshot snapshot(department.office().connection());
    const auto checks = newestChecks(snapshot);
    ASSERT_EQ(checks.size(), 2U);
    const auto second = std::ranges::find(checks, department.second().id(), &CheckTaken::reader);
    ASSERT_NE(second, checks.end());
    EXPECT_EQ(second->number, 2);
    EXPECT_EQ(second->of, 4);
    EXPECT_EQ(second->right, 3);
    EXPECT_EQ(second->acceptedWhatFails, 1);
    const auto agreement = agreementOfReaders(snapshot);
    ASSERT_TRUE(agreement);
    EXPECT_EQ(agreement->number, 1);
    EXPECT_EQ(agreement->agreement.readers, 2U);
    EXPECT_EQ(agreement->agreement.alike, 2);
    // Worked by hand: each says accept and reject twice, alike in two of four; by chance in two.
    ASSERT_TRUE(agreement->agreement.kappa);
    EXPECT_NEAR(*agreement->agreement.kappa, 0, 1e-12);
}

} // namespace
} // namespace loadwarden::testing
