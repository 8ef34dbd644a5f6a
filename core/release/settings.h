#pragma once

#include "core/indicators/biological.h"
#include "core/release/policy.h"

#include <vector>

namespace loadwarden {

/// How a policy takes biological indicators.
[[nodiscard]] BiologicalSettings biologicalSettings(const Policy& policy);

/// ISO 11140-1 types that count in a PCD for a method: by policy, and by what biological products
/// of the vials in the same PCD name.
[[nodiscard]] TypeSet pcdTypes(const Policy& policy, Method method, const std::vector<Vial>& vials,
                               const IndicatorRegister& known);

} // namespace loadwarden
