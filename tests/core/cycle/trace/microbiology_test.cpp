#include "core/cycle/trace/certificate.h"
#include "core/cycle/trace/microbiology.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

const double nan = std::nan("");

// The log-linear model (from memory): the survivors of 10^6 after 12 D are 10^-6, and so few that
// their number is the chance of one.
TEST(Microbiology, FollowsTheLogLinearModel)
{
    const Population spores{1e6, 1.5, {121.1, 10}};
    const Inactivation whole = inactivate(spores, 18);
    EXPECT_NEAR(whole.logReduction, 12, 1e-14);
    EXPECT_NEAR(whole.survivors / 1e-6, 1, 1e-12);
    EXPECT_NEAR(whole.chanceOfAny / (1e-6 - 0.5e-12), 1, 1e-12);
    EXPECT_EQ(whole.caveat, Caveat::chamberIsNotPack);
    // Six powers of ten leave one survivor on average: 63 % of the indicators grow.
    const Inactivation half = inactivate(spores, 9);
    EXPECT_NEAR(half.survivors, 1, 1e-12);
    EXPECT_NEAR(half.chanceOfAny, 1 - 1 / std::exp(1.0), 1e-12);
    // None delivered: everything is left.
    EXPECT_EQ(inactivate(spores, 0).survivors, 1e6);
    EXPECT_EQ(inactivate(spores, 0).chanceOfAny, 1);
}

TEST(Microbiology, KeepsTheChanceOfVeryFew)
{
    EXPECT_NEAR(chanceOfAny(1e-18) / 1e-18, 1, 1e-15);
    EXPECT_EQ(chanceOfAny(0), 0);
    EXPECT_EQ(inactivate({0, 1.5, {}}, 3).chanceOfAny, 0);
}

TEST(Microbiology, SaysNothingOfWhatCannotBe)
{
    for (const auto& [count, d, f] : {std::tuple{1e6, 0.0, 3.0},
                                      {1e6, -1.0, 3.0},
                                      {1e6, nan, 3.0},
                                      {-1.0, 1.5, 3.0},
                                      {nan, 1.5, 3.0},
                                      {1e6, 1.5, -3.0},
                                      {1e6, 1.5, nan}}) {
        const Inactivation result = inactivate({count, d, {}}, f);
        EXPECT_TRUE(std::isnan(result.logReduction));
        EXPECT_TRUE(std::isnan(result.survivors));
        EXPECT_TRUE(std::isnan(result.chanceOfAny));
    }
    EXPECT_TRUE(std::isnan(chanceOfAny(-1)));
    EXPECT_TRUE(std::isnan(logReduction(-1, 1)));
}

// ISO 11138-1 and USP, restated: 4.5 and 13.5 min at 10^5, 6 and 15 min at 10^6 for D = 1.5 min.
TEST(Certificate, ImpliesThePublishedWindows)
{
    EXPECT_NEAR(resistanceWindow(1e5, 1.5).survivalMinutes, 4.5, 1e-12);
    EXPECT_NEAR(resistanceWindow(1e5, 1.5).killMinutes, 13.5, 1e-12);
    EXPECT_NEAR(resistanceWindow(1e6, 1.5).survivalMinutes, 6, 1e-12);
    EXPECT_NEAR(resistanceWindow(1e6, 1.5).killMinutes, 15, 1e-12);
}

// ISO 11140-1, annex (2005 text): a type 5 indicator answers for 10^5 spores of D = 1.5 min brought
// to 10^-6, at least 16.5 min at 121 °C.
TEST(Certificate, GivesTheLeastStatedValueOfAType5)
{
    EXPECT_NEAR(minutesFor(5 + 6, 1.5), 16.5, 1e-12);
    EXPECT_TRUE(std::isnan(minutesFor(11, 0)));
    EXPECT_TRUE(std::isnan(minutesFor(11, nan)));
}

TEST(Certificate, IsHeldAgainstWhatItClaims)
{
    const auto agrees = checkCertificate(1e5, 1.5, {4.5, 13.5});
    EXPECT_FALSE(agrees.survivalShort);
    EXPECT_FALSE(agrees.killLong);
    // Printed to a tenth of a minute: (log10 2.3e5 − 2) · 1.7 is 5.71, (… + 4) · 1.7 is 15.91.
    const auto rounded = checkCertificate(2.3e5, 1.7, {5.7, 15.9});
    EXPECT_NEAR(rounded.implied.survivalMinutes, 5.7149, 1e-4);
    EXPECT_NEAR(rounded.implied.killMinutes, 15.9149, 1e-4);
    EXPECT_FALSE(rounded.survivalShort || rounded.killLong);
    EXPECT_TRUE(checkCertificate(2.3e5, 1.7, {5.6, 15.9}).survivalShort);
    EXPECT_FALSE(checkCertificate(2.3e5, 1.7, {5.6, 15.9}).killLong);
    EXPECT_TRUE(checkCertificate(2.3e5, 1.7, {5.7, 16.0}).killLong);
    // A wider promise than is implied is no fault.
    EXPECT_FALSE(checkCertificate(1e5, 1.5, {5, 13}).survivalShort);
    EXPECT_FALSE(checkCertificate(1e5, 1.5, {5, 13}).killLong);
    EXPECT_FALSE(checkCertificate(1e5, 0, {1, 100}).killLong);
    EXPECT_FALSE(checkCertificate(1e5, 1.5, {nan, nan}).survivalShort);
}

TEST(Certificate, PromisesNoSurvivalOfFew)
{
    EXPECT_EQ(resistanceWindow(50, 1.5).survivalMinutes, 0);
    EXPECT_TRUE(std::isnan(resistanceWindow(0, 1.5).killMinutes));
    EXPECT_TRUE(std::isnan(resistanceWindow(1e5, nan).survivalMinutes));
}

} // namespace
} // namespace loadwarden
