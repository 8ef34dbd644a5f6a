#pragma once

#include "core/release/finding_sink.h"
#include "core/release/view.h"

namespace loadwarden::rules {

/// The part of the rule `physical` that looks at the cycle specification, which must be there: one
/// that says too little, asks less of the record than its program is set to, contradicts itself, or
/// is not of this world.
void judgeSpecification(const View& view, FindingSink& sink);

/// Whether the specification lacks a limit of a parameter that must have one.
[[nodiscard]] bool isLimitMissing(const View& view, Parameter parameter);

/// Whether the sterilizer records a parameter: ethylene oxide's concentration and humidity not
/// always.
[[nodiscard]] bool isRecorded(const View& view, Parameter parameter);

} // namespace loadwarden::rules
