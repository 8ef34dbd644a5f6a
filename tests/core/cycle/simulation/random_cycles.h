#pragma once

#include "core/cycle/simulation/simulation.h"

#include <cstdint>

namespace loadwarden::testing {

/// Settings of any steam program, sampling and noise, without a fault. The same seed makes the
/// same.
[[nodiscard]] simulation::Settings cleanCycle(std::uint64_t seed);

/// The same cycle with one fault of a kind, at `share` of the size from which on it must be found
/// (tolerances.h).
[[nodiscard]] simulation::Settings faultyCycle(std::uint64_t seed, simulation::FaultKind kind,
                                               double share);

} // namespace loadwarden::testing
