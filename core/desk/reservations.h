#pragma once

#include "core/desk/sign_in.h"
#include "core/sterilizers/sterilizer_record.h"

#include <string>

namespace loadwarden {

/// A cycle that is to run.
struct CycleWanted {
    std::string sterilizer;    ///< sz-
    std::string specification; ///< sp-; empty: none
    Purpose purpose = Purpose::routine;
    Method method = Method::unknown; ///< where there is no specification
    std::string cycleType;           ///< where there is no specification
};

/// A cycle with its number for labels.
struct ReservedCycle {
    std::string cycle; ///< ld-
    std::string lot;   ///< lot control number
    Appended appended;
};

/// Reserves a cycle with the next lot control number of its sterilizer and facility day, which is
/// never given again, also not when the cycle is aborted or never runs.
[[nodiscard]] OrRefusal<ReservedCycle> reserveCycle(Office& office, const SignedIn& who,
                                                    const CycleWanted& wanted);

} // namespace loadwarden
