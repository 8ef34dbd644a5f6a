#pragma once

#include "tests/benchmarks/window/paint_watch.h"

#include <string>
#include <vector>

namespace loadwarden::benchmarks {

/// Prints the head of the table of figures.
void printHead();

/// Prints how long something took, in ms: the middle of all times and the longest, beside what is
/// asked for.
void printTimes(const std::string& what, const std::string& asked, const std::vector<Taken>& all);

/// Prints one number.
void printNumber(const std::string& what, const std::string& asked, double number);

[[nodiscard]] double middleOf(std::vector<double> all);

} // namespace loadwarden::benchmarks
