#pragma once

#include "core/cycle/simulation/simulation.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/instant.h"
#include "core/quantities/zone.h"

#include <cstdint>
#include <string>
#include <vector>

// What the recorders of the department's sterilizers write of its cycles. They are simulated, and
// each file and its name say so.

namespace loadwarden::demo {

/// A cycle of a sterilizer as its recorder sees it.
struct RecordedCycle {
    std::string sterilizer; ///< sz-
    std::int64_t counter = 0;
    Instant start; ///< of the cycle, and of the file
    std::vector<simulation::Fault> faults;
};

struct RecorderFile {
    std::string name;
    std::string text;
    TraceMapping mapping; ///< how the sterilizer's recorder writes
};

/// The file of a cycle of the program PREVAC 132; each sterilizer's recorder writes in its own way.
[[nodiscard]] RecorderFile recorderFileOf(const RecordedCycle& cycle, const Zone& zone,
                                          double atmosphereKPa);

} // namespace loadwarden::demo
