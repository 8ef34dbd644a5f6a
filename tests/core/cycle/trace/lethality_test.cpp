#include "core/cycle/trace/lethal_kernel.h"
#include "core/cycle/trace/lethality.h"
#include "core/cycle/trace/microbiology.h"
#include "tests/support/ask_python.h"
#include "trace_support.h"

#include <gtest/gtest.h>

#include <cmath>
#include <numeric>
#include <random>
#include <sstream>

namespace loadwarden {
namespace {

constexpr LethalReference f0{121.1, 10};
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

/// F the plain way.
double plainF(const std::vector<double>& seconds, const std::vector<double>& celsius,
              const LethalReference& reference)
{
    double area = 0;
    for (std::size_t i = 1; i < seconds.size(); ++i) {
        const double before =
            std::pow(10, (celsius[i - 1] - reference.celsius) / reference.zKelvin);
        const double after = std::pow(10, (celsius[i] - reference.celsius) / reference.zKelvin);
        area += (before + after) / 2 * (seconds[i] - seconds[i - 1]);
    }
    return area / 60;
}

/// Seconds in steps of 0.2 to 3, temperatures up to 140 °C, without a straight line anywhere.
std::pair<std::vector<double>, std::vector<double>> unevenCycle(unsigned seed, std::size_t samples)
{
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> step(0.2, 3);
    std::normal_distribution<double> noise(0, 0.3);
    std::vector<double> seconds;
    std::vector<double> celsius;
    double now = 0;
    for (std::size_t i = 0; i < samples; ++i) {
        const double way = static_cast<double>(i) / static_cast<double>(samples);
        seconds.push_back(now);
        celsius.push_back(20 + 117 * std::sin(3.14159 * way) + noise(random));
        now += step(random);
    }
    return {seconds, celsius};
}

// By arithmetic (facts of the general method); 0.077 is published for 110 °C and Tref 121.11 °C in
// tables of lethal rates with z = 10 °C.
TEST(Lethality, RatesAreThePublishedOnes)
{
    EXPECT_NEAR(lethalRate(134, {121.1, 10}), 19.49845, 0.5e-5);
    EXPECT_NEAR(lethalRate(134, {121.11, 10}), 19.45360, 0.5e-5);
    EXPECT_NEAR(lethalRate(110, {121.11, 10}), 0.077, 0.5e-3);
    EXPECT_EQ(lethalRate(121.1, f0), 1);
    EXPECT_NEAR(lethalRate(131.1, f0), 10, 1e-13);
}

// A published worked spreadsheet of the general method (tests/data/reference/SOURCES.md): z = 10
// °F, Tref = 150 °F. The printed F of its last row here was not seen.
TEST(Lethality, IsThatOfAPublishedSpreadsheetInEveryRow)
{
    const auto rows = support::referenceRows("lethality_z10F_tref150F.csv");
    ASSERT_EQ(rows.size(), 17U);
    const LethalReference reference{(150 - 32) / 1.8, 10 / 1.8};
    std::vector<double> seconds;
    std::vector<double> celsius;
    for (const auto& row : rows) {
        seconds.push_back(std::stod(row[0]) * 60);
        celsius.push_back((std::stod(row[1]) - 32) / 1.8);
    }
    const auto cumulative = cumulativeLethality(seconds, celsius, reference);
    int compared = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].size() < 3) {
            EXPECT_EQ(rows[i][0], "8");
            continue;
        }
        char printed[16];
        std::snprintf(printed, sizeof printed, "%.3f", cumulative[i]);
        EXPECT_EQ(printed, rows[i][2]) << rows[i][0] << " min";
        ++compared;
    }
    EXPECT_EQ(compared, 16);
    // Its printed end: F = 0.884 at 10 min, with D = 0.172 min a reduction of 5.14 powers of ten.
    EXPECT_GT(0.884, cumulative.back());
    EXPECT_NEAR(logReduction(0.884, 0.172), 5.14, 0.005);
}

// numpy as the outside source, run here, on simulated cycles of uneven steps.
TEST(Lethality, AgreesWithNumpy)
{
    std::ostringstream asked;
    asked.precision(17);
    const auto write = [&](const std::vector<double>& values) {
        for (const double value : values) {
            asked << value << ' ';
        }
        asked << '\n';
    };
    std::vector<std::pair<double, double>> ours;
    const LethalReference references[] = {f0, {121.11, 10}, {134, 6}, {170, 20}};
    for (unsigned seed = 0; seed < 24; ++seed) {
        std::vector<double> seconds;
        std::vector<double> celsius;
        if (seed % 3 == 0) {
            const Trace trace = support::chamberOf(support::prevacuumCourse(), 1 + seed / 3, 20);
            seconds = trace.seconds;
            celsius = trace.channels[1].values;
        } else {
            std::tie(seconds, celsius) = unevenCycle(seed, 300 + 100 * seed);
        }
        const LethalReference& reference = references[seed % 4];
        asked << reference.celsius << ' ' << reference.zKelvin << '\n';
        write(seconds);
        write(celsius);
        ours.emplace_back(lethality(seconds, celsius, reference).minutes,
                          cumulativeLethality(seconds, celsius, reference)[seconds.size() / 2]);
    }
    const auto lines = support::askPython("cycle/trace/lethality_numpy.py", asked.str());
    ASSERT_EQ(lines.size(), ours.size());
    for (std::size_t i = 0; i < lines.size(); ++i) {
        std::size_t used = 0;
        const double whole = std::stod(lines[i], &used);
        const double half = std::stod(lines[i].substr(used));
        ASSERT_GT(whole, 0);
        EXPECT_NEAR(ours[i].first / whole, 1, 1e-9) << i;
        EXPECT_NEAR(ours[i].second / half, 1, 1e-9) << i;
    }
}

TEST(Lethality, IsThePlainLoopTo1e12WithEitherKernel)
{
    for (unsigned seed = 0; seed < 50; ++seed) {
        const auto [seconds, celsius] = unevenCycle(seed, 2 + 37 * seed);
        const double plain = plainF(seconds, celsius, f0);
        EXPECT_NEAR(lethality(seconds, celsius, f0).minutes / plain, 1, 1e-12) << seed;
        const double slope = std::log(10.0) / 10;
        EXPECT_NEAR(
            lethal_kernel::plain.area(seconds.data(), celsius.data(), seconds.size(), 121.1, slope)
                / 60 / plain,
            1, 1e-12)
            << seed;
        std::vector<double> rates(seconds.size());
        lethal_kernel::plain.rates(celsius.data(), rates.data(), rates.size(), 121.1, slope);
        for (std::size_t i = 0; i < rates.size(); ++i) {
            ASSERT_NEAR(rates[i] / lethalRate(celsius[i], f0), 1, 1e-12);
        }
    }
}

TEST(Lethality, OfAConstantTemperatureIsRateTimesTimeWhateverTheSteps)
{
    const std::vector<double> seconds{0, 1, 30, 31, 119, 180, 240};
    const std::vector<double> celsius(seconds.size(), 134);
    EXPECT_NEAR(lethality(seconds, celsius, f0).minutes, 4 * 19.49845, 1e-4);
    EXPECT_EQ(lethality(seconds, celsius, f0).leftOutSeconds, 0);
}

TEST(Lethality, NeverCountsWhatWasNotMeasuredAndSaysSo)
{
    const std::vector<double> seconds{0, 60, 120, 180, 240, 300};
    const std::vector<double> celsius{121.1, 121.1, nan, 121.1, 121.1, 121.1};
    const Lethality result = lethality(seconds, celsius, f0);
    EXPECT_NEAR(result.minutes, 3, 1e-14);
    EXPECT_EQ(result.leftOutSeconds, 120);
    EXPECT_EQ(result.gaps, 1U);
    const auto cumulative = cumulativeLethality(seconds, celsius, f0);
    const std::vector<double> expected{0, 1, 1, 1, 2, 3};
    for (std::size_t i = 0; i < expected.size(); ++i) {
        EXPECT_NEAR(cumulative[i], expected[i], 1e-14) << i;
    }
}

TEST(Lethality, TakesNoValueBeyondEveryTemperatureAndNoLongStep)
{
    const std::vector<double> seconds{0, 60, 120, 180, 280, 340};
    for (const double wrong : {501.0, -91.0, 1e300, HUGE_VAL, -HUGE_VAL}) {
        const std::vector<double> celsius{wrong, 121.1, 121.1, 121.1, 121.1, wrong};
        const Lethality result = lethality(seconds, celsius, f0);
        EXPECT_NEAR(result.minutes, 2, 1e-14) << wrong;
        EXPECT_EQ(result.leftOutSeconds, 60 + 100 + 60) << wrong;
        EXPECT_EQ(result.gaps, 2U) << wrong;
    }
    const std::vector<double> warm(6, 121.1);
    EXPECT_NEAR(lethality(seconds, warm, f0, 100).minutes, 340 / 60.0, 1e-13);
}

TEST(Lethality, IsTotal)
{
    const std::vector<double> none;
    const std::vector<double> one{5};
    const std::vector<double> two{5, 65};
    const std::vector<double> warm{121.1, 121.1, 121.1};
    EXPECT_EQ(lethality(none, warm, f0), Lethality{});
    EXPECT_EQ(lethality(one, warm, f0), Lethality{});
    EXPECT_NEAR(lethality(two, warm, f0).minutes, 1, 1e-15);
    EXPECT_TRUE(cumulativeLethality(none, none, f0).empty());
    EXPECT_EQ(cumulativeLethality(one, warm, f0), std::vector<double>{0});
    for (const LethalReference wrong :
         {LethalReference{nan, 10}, LethalReference{121.1, 0}, LethalReference{121.1, -10},
          LethalReference{121.1, 1.9}, LethalReference{501, 10}, LethalReference{121.1, nan}}) {
        EXPECT_FALSE(isSound(wrong));
        EXPECT_TRUE(std::isnan(lethality(two, warm, wrong).minutes));
        EXPECT_TRUE(std::isnan(lethalRate(121.1, wrong)));
        const auto cumulative = cumulativeLethality(two, warm, wrong);
        ASSERT_EQ(cumulative.size(), 2U);
        EXPECT_TRUE(std::isnan(cumulative[0]) && std::isnan(cumulative[1]));
    }
    EXPECT_TRUE(std::isnan(lethalRate(nan, f0)));
}

} // namespace
} // namespace loadwarden
