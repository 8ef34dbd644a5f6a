#pragma once

#include "core/cycle/trace/evaluate.h"

#include <string>

// What was computed of a trace, in words.

namespace loadwarden {

// Labels: without a full stop.
[[nodiscard]] std::string say(Shown shown); ///< an answer
[[nodiscard]] std::string say(PhaseKind kind);
[[nodiscard]] std::string say(InterruptionCause cause);

// Sentences.
[[nodiscard]] std::string say(TraceProblem problem); ///< with what to do
[[nodiscard]] std::string say(Caveat caveat);
/// What a difference from saturation means, either way.
[[nodiscard]] std::string saySaturationMeaning();

} // namespace loadwarden
