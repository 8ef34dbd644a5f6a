#include "core/cycle/trace/series.h"
#include "core/cycle/trace/turning_points.h"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace loadwarden {
namespace {

const double nan = std::nan("");

// By hand:
// x 0 1 2 3, y 1 3 2 5: slope 1.1, residual sum 2.7, standard error sqrt(2.7 / 2 / 5).
TEST(Series, FitsALineByLeastSquares)
{
    const std::vector<double> seconds{0, 1, 2, 2.5, 3};
    const std::vector<double> values{1, 3, 2, nan, 5};
    const Line line = fitLine(seconds, values);
    EXPECT_NEAR(line.slope, 1.1, 1e-14);
    EXPECT_NEAR(line.standardError, std::sqrt(2.7 / 2 / 5), 1e-14);
    EXPECT_EQ(line.samples, 4U);
}

TEST(Series, HasNoLineThroughLessThanTwo)
{
    const std::vector<double> seconds{0, 1};
    const std::vector<double> values{nan, 3};
    EXPECT_TRUE(std::isnan(fitLine(seconds, values).slope));
    EXPECT_TRUE(std::isnan(fitLine({}, {}).slope));
    EXPECT_TRUE(std::isnan(fitLine(seconds, std::vector{1.0, 3.0}).standardError));
    EXPECT_NEAR(fitLine(seconds, std::vector{1.0, 3.0}).slope, 2, 1e-15);
}

TEST(Series, MeansOverTimeAndNotOverSamples)
{
    const std::vector<double> seconds{0, 1, 2, 12};
    EXPECT_NEAR(timeMean(seconds, std::vector{0.0, 0.0, 0.0, 6.0}), 30.0 / 12, 1e-14);
    EXPECT_NEAR(timeMean(seconds, std::vector{4.0, nan, 5.0, 6.0}), 5.5, 1e-14);
    EXPECT_NEAR(timeMean(seconds, std::vector{4.0, nan, 6.0, nan}), 5, 1e-14);
    EXPECT_TRUE(std::isnan(timeMean(seconds, std::vector{nan, nan, nan, nan})));
    EXPECT_TRUE(std::isnan(timeMean({}, {})));
}

std::vector<std::size_t> places(const std::vector<double>& values, double swing)
{
    std::vector<std::size_t> found;
    bool first = true;
    bool trough = false;
    for (const TurningPoint& turn : turningPoints(values, swing)) {
        if (!first) {
            EXPECT_NE(turn.isTrough, trough);
        }
        trough = turn.isTrough;
        first = false;
        found.push_back(turn.sample);
    }
    return found;
}

TEST(TurningPoints, AreExtremesThatTheSeriesCameToAndLeft)
{
    EXPECT_EQ(places({100, 50, 10, 60, 100, 90, 20, 99}, 15), (std::vector<std::size_t>{2, 4, 6}));
    // Where it begins and ends is none; a smaller swing is none.
    EXPECT_EQ(places({10, 100}, 15), std::vector<std::size_t>{});
    EXPECT_EQ(places({10, 100, 86, 100, 20}, 15), std::vector<std::size_t>{1});
    EXPECT_EQ(places({10, 100, 85, 100, 20}, 15), (std::vector<std::size_t>{1, 2, 3}));
    // NaN is passed over; the first of equal extremes is taken.
    EXPECT_EQ(places({nan, 100, nan, 5, 5, nan, 50, nan}, 15), std::vector<std::size_t>{3});
    EXPECT_EQ(places({}, 15), std::vector<std::size_t>{});
    EXPECT_EQ(places({nan, nan}, 15), std::vector<std::size_t>{});
}

} // namespace
} // namespace loadwarden
