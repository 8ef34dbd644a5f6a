#pragma once

#include "core/cycle/trace/evaluate.h"
#include "core/words/say_terms.h" // whether something is shown

#include <string>

namespace loadwarden {

// What was computed of a trace, in words, UTF-8.

// Labels: without a full stop.
[[nodiscard]] std::string say(PhaseKind kind);
[[nodiscard]] std::string say(BoundaryRule rule); ///< what set a boundary: "pressure reached ..."
[[nodiscard]] std::string say(InterruptionCause cause);

/// Why a trace cannot be evaluated wholly and what to do: sentences.
[[nodiscard]] std::string say(TraceProblem problem);

/// Time since the trace began: "0:04:05", with decimals of a second where there are some. Of what
/// is not finite: "not known".
[[nodiscard]] std::string sayTraceTime(double seconds);

/// A length of time: "45 s", "4 min 05 s", "1 h 02 min 05 s".
[[nodiscard]] std::string sayLength(double seconds);

/// What the samples leave open: "4 min 00 s to 4 min 02 s", "at least ..." where nothing bounds it.
[[nodiscard]] std::string sayBounds(const Bounds& seconds);

/// A number with so many decimals at most, "not known" where it is none; a true minus sign.
[[nodiscard]] std::string sayNumber(double value, int decimals);

/// That the chamber's temperature is not that inside the pack: goes with every lethality.
[[nodiscard]] std::string say(Caveat caveat);

} // namespace loadwarden
