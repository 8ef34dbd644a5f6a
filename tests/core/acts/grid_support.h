#pragma once

#include "tests/core/acts/steps_support.h"

#include <cstdint>
#include <string>
#include <vector>

namespace loadwarden::tests {

/// What came of trying histories.
struct Tried {
    std::int64_t histories = 0;
    std::int64_t released = 0;
    std::string broken; ///< the first that was found not to hold, and where; empty: all hold
};

/// Tries every sequence of up to `depth` steps after a journal, each with each gap of the grid
/// before it, and asks brokenPredicates() of every one; the journal alone is the first of them.
/// `workers` share the work.
[[nodiscard]] Tried tryGrid(const Journal& journal, Instant when, const std::vector<Step>& steps,
                            int depth, unsigned workers);

/// Sequences of up to `depth` steps on the grid, none among them.
[[nodiscard]] std::int64_t sequencesOnGrid(std::size_t steps, int depth);

} // namespace loadwarden::tests
