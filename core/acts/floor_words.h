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

inline constexpr Word<CheckAnswer> checkAnswerWords[] = {
    {"accept", CheckAnswer::accept},
    {"reject", CheckAnswer::reject},
    {"unclear", CheckAnswer::unclear},
};

} // namespace loadwarden
