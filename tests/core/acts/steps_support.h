#pragma once

#include "tests/core/acts/journal_support.h"

#include <array>
#include <cstddef>
#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace loadwarden::tests {

/// Adds an act, or a correction of the newest entry of its kinds, to a journal at a moment.
struct Step {
    Person who;
    std::vector<std::string> subjects; ///< of an act of its own
    AnyAct act;
    std::vector<std::size_t> corrects; ///< kinds, as indices of AnyAct; empty: an act of its own

    /// The entry that it would correct, 0 for an act of its own; nullopt: there is none to correct,
    /// so that nothing is added.
    [[nodiscard]] std::optional<std::int64_t> target(std::span<const Entry> entries) const;

    void operator()(Journal& journal, Instant when) const;
};

/// Acts of several persons that help or harm load ld-1 of journal_support.h, and corrections.
[[nodiscard]] std::vector<Step> steps();

/// The first of them, of which the longest sequences are made. What is left out are further
/// readings and ends of which one like it stays, and an item put in late.
inline constexpr std::size_t firstSteps = 25;

/// Milliseconds between two acts: none, a minute, more than may pass unsaid.
inline constexpr std::array<std::int64_t, 3> gaps{0, 60'000, 18'000'000};

} // namespace loadwarden::tests
