#include "core/indicators/agreement.h"
#include "tests/support/ask_python.h"

#include <gtest/gtest.h>

#include <random>
#include <sstream>

namespace loadwarden {
namespace {

using Table = std::vector<std::vector<std::int64_t>>;

// Source: the three worked examples in the article "Cohen's kappa" of Wikipedia, to the printed
// digits.
TEST(CohensKappa, IsThatOfTheWorkedExamples)
{
    EXPECT_NEAR(cohensKappa({{20, 5}, {10, 15}}).value(), 0.4, 5e-4);
    EXPECT_NEAR(cohensKappa({{45, 15}, {25, 15}}).value(), 0.1304, 5e-5);
    EXPECT_NEAR(cohensKappa({{25, 35}, {5, 35}}).value(), 0.2593, 5e-5);
}

/// 30 patients, six who judged, five diagnoses. Source: Fleiss (1971), table 1. From memory; the
/// shares of the diagnoses that he prints check it below.
const Table diagnoses = {
    {0, 0, 0, 6, 0}, {0, 3, 0, 0, 3}, {0, 1, 4, 0, 1}, {0, 0, 0, 0, 6}, {0, 3, 0, 3, 0},
    {2, 0, 4, 0, 0}, {0, 0, 4, 0, 2}, {2, 0, 3, 1, 0}, {2, 0, 0, 4, 0}, {0, 0, 0, 0, 6},
    {1, 0, 0, 5, 0}, {1, 1, 0, 4, 0}, {0, 3, 3, 0, 0}, {1, 0, 0, 5, 0}, {0, 2, 0, 3, 1},
    {0, 0, 5, 0, 1}, {3, 0, 0, 1, 2}, {5, 1, 0, 0, 0}, {0, 2, 0, 4, 0}, {1, 0, 2, 0, 3},
    {0, 0, 0, 0, 6}, {0, 1, 0, 5, 0}, {0, 2, 0, 1, 3}, {2, 0, 0, 4, 0}, {1, 0, 0, 4, 1},
    {0, 5, 0, 1, 0}, {4, 0, 0, 0, 2}, {0, 2, 0, 4, 0}, {1, 0, 5, 0, 0}, {0, 0, 0, 0, 6}};

TEST(FleissKappa, IsThatOfItsFirstExample)
{
    const double shares[] = {0.144, 0.144, 0.167, 0.306, 0.239};
    for (std::size_t answer = 0; answer < 5; ++answer) {
        double given = 0;
        for (const auto& row : diagnoses) {
            given += static_cast<double>(row[answer]);
        }
        EXPECT_NEAR(given / 180, shares[answer], 5e-4) << answer;
    }
    EXPECT_NEAR(fleissKappa(diagnoses).value(), 0.430, 5e-4);
}

TEST(Kappa, IsNotWhereThereIsNothingToCompare)
{
    EXPECT_FALSE(cohensKappa({}));
    EXPECT_FALSE(cohensKappa({{0, 0}, {0, 0}}));
    EXPECT_FALSE(cohensKappa({{1, 2}, {3}}));
    EXPECT_FALSE(cohensKappa({{1, -2}, {3, 4}}));
    EXPECT_FALSE(cohensKappa({{7, 0}, {0, 0}})) << "both said always the same";
    EXPECT_FALSE(fleissKappa({}));
    EXPECT_FALSE(fleissKappa({{1, 0}, {0, 1}})) << "one reader";
    EXPECT_FALSE(fleissKappa({{2, 0}, {1, 2}})) << "not as many each time";
    EXPECT_FALSE(fleissKappa({{3, 0}, {3, 0}})) << "all said always the same";
    EXPECT_EQ(cohensKappa({{5, 0}, {0, 5}}), 1);
    EXPECT_EQ(cohensKappa({{0, 5}, {5, 0}}), -1);
    EXPECT_EQ(fleissKappa({{3, 0}, {0, 3}}), 1);
}

// statsmodels as the outside source, run here, on tables at random.
TEST(Kappa, AgreesWithStatsmodels)
{
    std::mt19937 random(20310304);
    std::ostringstream asked;
    std::vector<double> ours;
    const auto add = [&](const char* which, const Table& table, std::optional<double> kappa) {
        ASSERT_TRUE(kappa.has_value());
        asked << which << ' ' << table.size() << '\n';
        for (const auto& row : table) {
            for (const std::int64_t count : row) {
                asked << count << ' ';
            }
            asked << '\n';
        }
        ours.push_back(*kappa);
    };
    for (int i = 0; i < 40; ++i) {
        const std::size_t answers = 2 + random() % 4;
        Table two(answers, std::vector<std::int64_t>(answers));
        for (auto& row : two) {
            for (auto& count : row) {
                count = static_cast<std::int64_t>(1 + random() % 30);
            }
        }
        add("cohen", two, cohensKappa(two));
        Table several(10 + random() % 30, std::vector<std::int64_t>(answers));
        const std::size_t readers = 2 + random() % 6;
        for (auto& row : several) {
            for (std::size_t reader = 0; reader < readers; ++reader) {
                ++row[random() % answers];
            }
        }
        add("fleiss", several, fleissKappa(several));
    }
    add("fleiss", diagnoses, fleissKappa(diagnoses));
    const auto theirs = support::askPython("indicators/agreement_statsmodels.py", asked.str());
    ASSERT_EQ(theirs.size(), ours.size());
    for (std::size_t i = 0; i < ours.size(); ++i) {
        EXPECT_NEAR(std::stod(theirs[i]), ours[i], 1e-12) << i;
    }
}

} // namespace
} // namespace loadwarden
