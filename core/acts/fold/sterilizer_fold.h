#pragma once

#include "core/acts/fold/cycle_fold.h"
#include "core/sterilizers/sterilizer_record.h"

#include <string_view>
#include <vector>

namespace loadwarden {

/// A sterilizer and its cycles.
struct SterilizerFold {
    SterilizerRecord record; ///< its cycles are those below that have started, but for `except`
    std::vector<CycleFold> cycles; ///< in the order in which they were reserved, without `except`
};

/// Folds the entries about a sterilizer, and those about its cycles but one (empty: all).
[[nodiscard]] SterilizerFold foldSterilizer(Folding& folding, std::string_view id,
                                            std::string_view except);

} // namespace loadwarden
