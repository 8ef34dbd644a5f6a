#pragma once

#include "core/cycle/specification.h"

#include <vector>

namespace loadwarden {

/// Whether a limit can be judged by: at least one value, each in a unit that fits its parameter,
/// each unit once on a side and in the order of Unit, and in no unit the least above the most.
[[nodiscard]] bool isSound(const Limit& limit);

/// Whether the limits of a parameter stand in one entry.
[[nodiscard]] bool hasEachParameterOnce(const std::vector<Limit>& limits);

} // namespace loadwarden
