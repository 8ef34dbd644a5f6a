// The calculator of survivors against published figures. It computes by core/cycle/trace, whose own
// tests compare with numpy; here stands what a teacher would check by hand.

#include "core/exchange/policy_reader.h"
#include "core/guidance/answer.h"
#include "guidance_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

Assurance of(double population, double dMinutes, double minutes)
{
    const auto result = assure(population, dMinutes, minutes);
    EXPECT_TRUE(std::holds_alternative<Assurance>(result));
    return std::get<Assurance>(result);
}

TEST(Assurance, SurvivalAndKillWindowOfABiologicalIndicator)
{
    // ISO 11138-1 / USP, restated: with D = 1.5 min a population of 10^5 survives 4.5 min and is
    // killed in 13.5 min, one of 10^6 survives 6 min and is killed in 15 min: survival (log10 N0 −
    // 2) D, which leaves 100, kill (log10 N0 + 4) D, which leaves 10^-4.
    EXPECT_NEAR(of(1e5, 1.5, 4.5).survivors, 100, 1e-9);
    EXPECT_NEAR(of(1e6, 1.5, 6).survivors, 100, 1e-9);
    EXPECT_NEAR(of(1e5, 1.5, 13.5).survivors, 1e-4, 1e-15);
    EXPECT_NEAR(of(1e6, 1.5, 15).survivors, 1e-4, 1e-15);
}

TEST(Assurance, HalfAndFullCycle)
{
    // WFHSS guidance on overkill: half the cycle kills the population, the whole adds as much
    // again: a sterility assurance level of 10^-6 (CDC 2008).
    const Assurance half = of(1e6, 1.5, 9);
    EXPECT_NEAR(half.logReduction, 6, 1e-12);
    EXPECT_NEAR(half.survivors, 1, 1e-9);
    EXPECT_NEAR(half.chanceOfAny, 1 - std::exp(-1.0), 1e-9); // Poisson
    const Assurance full = of(1e6, 1.5, 18);
    EXPECT_NEAR(full.logReduction, 12, 1e-12);
    EXPECT_NEAR(full.chanceOfAny, 1e-6, 1e-11);
    EXPECT_NEAR(full.minutesAsked, 18, 1e-5);
    EXPECT_NEAR(of(1e6, 1.5, full.minutesAsked).chanceOfAny, askedAssurance, 1e-15);
}

TEST(Assurance, ADeadVialIsNotByItselfOneInAMillion)
{
    const Assurance seven = of(1e6, 1.5, 10.5);
    EXPECT_GT(seven.chanceOfNone, 0.9); // the vial is most likely dead
    EXPECT_GT(seven.chanceOfAny, 0.09); // and yet one in ten is not
}

TEST(Assurance, EndsOfTheRange)
{
    EXPECT_EQ(of(1e6, 1.5, 0).survivors, 1e6);
    EXPECT_EQ(of(1e-9, 1.5, 1).minutesAsked, 0); // so few that no time is needed
    for (const auto& wrong : {assure(0, 1, 1), assure(-1, 1, 1), assure(1e13, 1, 1),
                              assure(1, 0, 1), assure(1, 1, -1), assure(notKnown, 1, 1),
                              assure(1, notKnown, 1), assure(1, 1, notKnown), assure(1, 1e5, 1)}) {
        EXPECT_TRUE(std::holds_alternative<std::string>(wrong));
    }
}

TEST(Assurance, StandsInTheAnswer)
{
    const TopicLibrary& library = testing::shippedTopics();
    const Topic* topic = library.find("sterile-meaning", "en");
    const TopicAnswer answer =
        answerTopic(library, *topic, defaultPolicy(), *parseDate("2027-01-01"));
    ASSERT_EQ(answer.calculations.size(), 3U);
    EXPECT_NEAR(answer.calculations[2].assurance.chanceOfAny, 1e-6, 1e-11);
}

} // namespace
} // namespace loadwarden
