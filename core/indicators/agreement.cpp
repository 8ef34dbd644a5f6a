#include "core/indicators/agreement.h"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace loadwarden {
namespace {

std::optional<double> beyondChance(double observed, double byChance)
{
    constexpr double smallest = 1e-12; // below it, rounding
    if (1 - byChance < smallest) {
        return std::nullopt;
    }
    return (observed - byChance) / (1 - byChance);
}

bool hasNegative(const std::vector<std::int64_t>& row)
{
    return std::ranges::any_of(row, [](std::int64_t count) { return count < 0; });
}

} // namespace

std::optional<double> cohensKappa(const std::vector<std::vector<std::int64_t>>& table)
{
    const std::size_t answers = table.size();
    std::vector<double> first(answers);
    std::vector<double> second(answers);
    double all = 0;
    double agreed = 0;
    for (std::size_t row = 0; row < answers; ++row) {
        if (table[row].size() != answers || hasNegative(table[row])) {
            return std::nullopt;
        }
        for (std::size_t column = 0; column < answers; ++column) {
            const auto count = static_cast<double>(table[row][column]);
            all += count;
            agreed += row == column ? count : 0;
            first[row] += count;
            second[column] += count;
        }
    }
    if (all <= 0) {
        return std::nullopt;
    }
    const double byChance =
        std::inner_product(first.begin(), first.end(), second.begin(), 0.0) / (all * all);
    return beyondChance(agreed / all, byChance);
}

std::optional<double> fleissKappa(const std::vector<std::vector<std::int64_t>>& counts)
{
    if (counts.empty()) {
        return std::nullopt;
    }
    const std::size_t answers = counts.front().size();
    const std::int64_t readers =
        std::accumulate(counts.front().begin(), counts.front().end(), std::int64_t{0});
    if (readers < 2) {
        return std::nullopt;
    }
    std::vector<double> given(answers);
    double pairs = 0; // of readers that agree
    for (const std::vector<std::int64_t>& row : counts) {
        if (row.size() != answers || hasNegative(row)
            || std::accumulate(row.begin(), row.end(), std::int64_t{0}) != readers) {
            return std::nullopt;
        }
        for (std::size_t answer = 0; answer < answers; ++answer) {
            const auto count = static_cast<double>(row[answer]);
            pairs += count * (count - 1);
            given[answer] += count;
        }
    }
    const auto things = static_cast<double>(counts.size());
    const auto each = static_cast<double>(readers);
    double byChance = 0;
    for (const double count : given) {
        byChance += count * count / (things * each * things * each);
    }
    return beyondChance(pairs / (things * each * (each - 1)), byChance);
}

} // namespace loadwarden
