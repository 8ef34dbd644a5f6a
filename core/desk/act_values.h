#pragma once

#include "core/acts/any_act.h"

#include <string>

namespace loadwarden {

/// What somebody read or saw, in the words of ACTS.md ("no-growth", "temperature 131.9 celsius",
/// "dry: no"); empty where an act is no reading.
[[nodiscard]] std::string valueRead(const AnyAct& act);

} // namespace loadwarden
