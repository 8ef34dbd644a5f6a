#pragma once

#include "core/cycle/specification.h"
#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/trace_findings.h"
#include "core/cycle/trace/trace_reader.h"
#include "core/quantities/word.h"
#include "core/quantities/zone.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What stands among the defects of a trace that cannot be evaluated, or not wholly, so that it is
/// not fit to help.
inline constexpr Word<TraceProblem> traceProblemWords[] = {
    {"no-samples", TraceProblem::noSamples},
    {"times-not-rising", TraceProblem::timesNotRising},
    {"lengths-differ", TraceProblem::lengthsDiffer},
    {"required-missing", TraceProblem::requiredMissing},
    {"no-pressure", TraceProblem::noPressure},
    {"no-atmosphere", TraceProblem::noAtmosphere},
};

/// Every kind of defect of a reading, also of those that it does not tell one by one, and every
/// problem of its evaluation; each once.
[[nodiscard]] std::vector<std::string> defectWordsOf(const TraceReading& reading,
                                                     const TraceEvaluation& evaluation);

/// What is recorded of a trace that was evaluated by a specification; nullptr: by none. Its id and
/// act are left out. The recorder's clock is taken for that of the sterilizer, and its local time
/// for that of the zone; a start of which the date is not written is left out: by the time alone it
/// may be of any day. So is what a limit of the journal does not let in, and a time of which the
/// trace shows no end.
[[nodiscard]] TraceFindings findingsOf(const TraceReading& reading,
                                       const TraceEvaluation& evaluation,
                                       const CycleSpecification* specification, const Zone& zone);

} // namespace loadwarden
