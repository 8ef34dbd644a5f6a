#pragma once

#include "core/cycle/specification.h"
#include "core/quantities/pressure.h"
#include "core/store/reach/cycles_in_reach.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace loadwarden {

/// From which value on a reading is no longer below a specification's least limits, for each
/// parameter that has one (drying apart, which is no process failure) and each unit in which it may
/// be read. Where gauge and absolute pressure meet, by each of the atmospheres and without one.
[[nodiscard]] std::vector<LeastValue> leastValues(const std::string& bound,
                                                  const CycleSpecification& specification,
                                                  std::span<const AbsolutePressure> atmospheres);

} // namespace loadwarden
