#pragma once

#include "core/cycle/trace/defect_log.h"

namespace loadwarden {

/// Works out the steps between samples, and adds gaps, jumps and flat sensors to the log.
void checkSensors(TraceReading& reading, const TraceMapping& mapping, const TraceLimits& limits,
                  DefectLog& log);

} // namespace loadwarden
