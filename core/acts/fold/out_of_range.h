#pragma once

#include "core/acts/fold/folding.h"
#include "core/indicators/indicator.h"

#include <string_view>
#include <vector>

namespace loadwarden {

/// The spans in which an incubator was out of range, one for each time that it was put out, in the
/// order in which that was entered; takes their facts. `own`: of the cycle that is folded.
[[nodiscard]] std::vector<OutOfRange> spansOutOfRange(Folding& folding, std::string_view incubator,
                                                      bool own);

} // namespace loadwarden
