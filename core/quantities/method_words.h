#pragma once

#include "core/quantities/method.h"
#include "core/quantities/word.h"

namespace loadwarden {

/// `unknown`, the last, is no method that instructions state.
inline constexpr Word<Method> methodWords[] = {
    {"steam", Method::steam},
    {"ethylene-oxide", Method::ethyleneOxide},
    {"hydrogen-peroxide", Method::hydrogenPeroxide},
    {"dry-heat", Method::dryHeat},
    {"unknown", Method::unknown},
};

inline constexpr Word<AirRemoval> airRemovalWords[] = {
    {"gravity", AirRemoval::gravity},
    {"prevacuum", AirRemoval::prevacuum},
    {"steam-flush-pressure-pulse", AirRemoval::steamFlushPressurePulse},
    {"unknown", AirRemoval::unknown},
};

} // namespace loadwarden
