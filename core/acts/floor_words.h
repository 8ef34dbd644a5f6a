#pragma once

#include "core/acts/kinds/floor_acts.h"
#include "core/quantities/word.h"

namespace loadwarden {

inline constexpr Word<PackageFault> packageFaultWords[] = {
    {"wet", PackageFault::wet},
    {"torn", PackageFault::torn},
    {"unsealed", PackageFault::unsealed},
    {"label-differs", PackageFault::labelDiffers},
};

inline constexpr Word<ReadAs> readAsWords[] = {
    {"accept", ReadAs::accept},
    {"reject", ReadAs::reject},
    {"unclear", ReadAs::unclear},
};

} // namespace loadwarden
