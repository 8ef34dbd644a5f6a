#pragma once

#include "core/acts/fold/cycle_fold.h"
#include "core/sterilizers/sterilizer_record.h"

#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A sterilizer, with its cycles that have started.
struct SterilizerFold {
    SterilizerRecord record;
    std::vector<std::string> cycleIds; ///< ld-, beside record.cycles
};

/// Folds the entries about a sterilizer, and those about its cycles but one (empty: all). Incidents
/// name cycles by their ids.
[[nodiscard]] SterilizerFold foldSterilizer(Folding& folding, std::string_view id,
                                            std::string_view except);

} // namespace loadwarden
