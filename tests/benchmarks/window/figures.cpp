#include "tests/benchmarks/window/figures.h"

#include <algorithm>
#include <cstdio>

namespace loadwarden::benchmarks {
namespace {

std::vector<double> each(const std::vector<Taken>& all, double Taken::* which)
{
    std::vector<double> values;
    values.reserve(all.size());
    for (const Taken& one : all) {
        values.push_back(one.*which);
    }
    std::ranges::sort(values);
    return values;
}

} // namespace

double middleOf(std::vector<double> all)
{
    std::ranges::sort(all);
    return all.empty() ? 0 : all[all.size() / 2];
}

void printHead()
{
    std::printf("%-58s %9s %5s %9s %9s %9s %9s\n", "ms", "asked", "times", "middle", "longest",
                "processor", "longest");
}

void printTimes(const std::string& what, const std::string& asked, const std::vector<Taken>& all)
{
    const auto wall = each(all, &Taken::wall);
    const auto processor = each(all, &Taken::processor);
    if (all.empty()) {
        return;
    }
    std::printf("%-58s %9s %5zu %9.1f %9.1f %9.1f %9.1f\n", what.c_str(), asked.c_str(), all.size(),
                middleOf(wall), wall.back(), middleOf(processor), processor.back());
    std::fflush(stdout);
}

void printNumber(const std::string& what, const std::string& asked, double number)
{
    std::printf("%-58s %9s %15.0f\n", what.c_str(), asked.c_str(), number);
    std::fflush(stdout);
}

} // namespace loadwarden::benchmarks
