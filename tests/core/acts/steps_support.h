#pragma once

#include "tests/core/acts/journal_support.h"

#include <array>
#include <cstdint>
#include <functional>
#include <vector>

namespace loadwarden::tests {

/// Adds an act, or a correction of the newest entry of its kinds, to a journal at a moment.
using Step = std::function<void(Journal&, Instant)>;

/// Acts of several persons that help or harm load ld-1 of journal_support.h, and corrections.
[[nodiscard]] std::vector<Step> steps();

/// Milliseconds between two acts: none, a minute, more than may pass unsaid.
inline constexpr std::array<std::int64_t, 3> gaps{0, 60'000, 18'000'000};

} // namespace loadwarden::tests
