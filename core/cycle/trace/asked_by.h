#pragma once

#include "core/cycle/specification.h"
#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/pressure.h"

#include <optional>

namespace loadwarden {

/// What a cycle specification asks of a trace that is read by a mapping. Required is every chamber,
/// drain and load temperature; of a specification without a least temperature none, since anything
/// would be in its band. A limit counts as it is stated in the recorder's unit, else converted from
/// the first that is stated; where the recorder writes in two units, the narrower. What has no
/// least limit is asked as the program is set. A method that is not known is taken for steam.
[[nodiscard]] AskedOfTrace askedBy(const CycleSpecification& specification,
                                   const TraceMapping& mapping,
                                   const std::optional<AbsolutePressure>& atmosphere);

} // namespace loadwarden
