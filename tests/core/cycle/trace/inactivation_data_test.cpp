// Open data against the whole of the model: survivors at constant temperatures, 95 to 107 °C, and
// the published one-step fit to them. Garre, Fernandez, Lindqvist, Egea 2017, Food Res. Int.
// 93:66-74, doi 10.1016/j.foodres.2017.01.012 (R package bioinactivation 1.3.0).

#include "core/cycle/trace/microbiology.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>

namespace loadwarden {
namespace {

constexpr double publishedZ = 7.7605;
constexpr double publishedZError = 0.2442;
constexpr double publishedD = 2.9805; ///< minutes at 100 °C
constexpr double publishedDError = 0.1422;

struct Survivors {
    double minutes;
    double celsius;
    double log; ///< of the part that survives, not above 0 but for scatter
};

std::vector<Survivors> measured()
{
    std::vector<Survivors> all;
    for (const auto& row : support::referenceRows("isothermal_inactivation.csv")) {
        all.push_back({std::stod(row[0]), std::stod(row[1]), std::stod(row[2])});
    }
    return all;
}

/// What the program says of a constant temperature held that long.
double predictedLog(const Survivors& of, double z, double d)
{
    const LethalReference reference{100, z};
    const std::vector<double> seconds{0, of.minutes * 60};
    const std::vector<double> celsius{of.celsius, of.celsius};
    const double f = lethality(seconds, celsius, reference, 1e9).minutes;
    return std::log10(survivorsOf(1, logReduction(f, d)));
}

double squares(const std::vector<Survivors>& all, double z, double d)
{
    double sum = 0;
    for (const Survivors& one : all) {
        const double off = one.log - predictedLog(one, z, d);
        sum += off * off;
    }
    return sum;
}

/// The least squares of the same model by a search of its own.
std::pair<double, double> bestFit(const std::vector<Survivors>& all)
{
    double z = 9;
    double d = 4;
    for (double step = 0.5; step > 1e-7;) {
        const double before = squares(all, z, d);
        double best = before;
        std::pair<double, double> better{z, d};
        for (const auto& [dz, dd] : {std::pair{step, 0.0},
                                     {-step, 0.0},
                                     {0.0, step},
                                     {0.0, -step},
                                     {step, step},
                                     {-step, -step},
                                     {step, -step},
                                     {-step, step}}) {
            if (const double sum = squares(all, z + dz, d + dd); sum < best) {
                best = sum;
                better = {z + dz, d + dd};
            }
        }
        std::tie(z, d) = better;
        step = best < before ? step : step / 2;
    }
    return {z, d};
}

TEST(InactivationData, ArePredictedByThePublishedFitAsWellAsByAnyOther)
{
    const auto all = measured();
    ASSERT_EQ(all.size(), 68U);
    const auto [z, d] = bestFit(all);
    // The paper prints four decimals.
    EXPECT_NEAR(z, publishedZ, 0.5e-4);
    EXPECT_NEAR(d, publishedD, 0.5e-4);
    const double least = squares(all, z, d);
    EXPECT_NEAR(squares(all, publishedZ, publishedD) / least, 1, 1e-6);
    // A fit one standard error aside is worse, so that the agreement says something.
    EXPECT_GT(squares(all, publishedZ + publishedZError, publishedD) / least, 1.01);
    EXPECT_GT(squares(all, publishedZ, publishedD + publishedDError) / least, 1.01);
}

TEST(InactivationData, LieAroundThePredictionWithoutBias)
{
    const auto all = measured();
    double sum = 0;
    double scatter = 0;
    for (const Survivors& one : all) {
        const double off = one.log - predictedLog(one, publishedZ, publishedD);
        sum += off;
        scatter += one.log * one.log;
    }
    EXPECT_LT(std::abs(sum / static_cast<double>(all.size())), 0.25);
    EXPECT_LT(squares(all, publishedZ, publishedD) / scatter, 0.05);
}

} // namespace
} // namespace loadwarden
