#pragma once

#include "ui/trace/trace_facts_list.h"

namespace loadwarden::ui {

// The groups of factsOf(), each of one subject.

[[nodiscard]] TraceFactGroup exposureFacts(const Trace& trace, const TraceEvaluation& evaluation,
                                           const AskedOfTrace& asked);
[[nodiscard]] TraceFactGroup saturationFacts(const Trace& trace, const TraceEvaluation& evaluation,
                                             const AskedOfTrace& asked);
[[nodiscard]] TraceFactGroup dryingFacts(const Trace& trace, const TraceEvaluation& evaluation,
                                         const AskedOfTrace& asked);
[[nodiscard]] TraceFactGroup lethalityFacts(const Trace& trace, const TraceEvaluation& evaluation,
                                            const AskedOfTrace& asked);
[[nodiscard]] TraceFactGroup phaseFacts(const Trace& trace, const TraceEvaluation& evaluation,
                                        const AskedOfTrace& asked);

[[nodiscard]] QString factNumber(double value, int decimals);
[[nodiscard]] QString factTime(double seconds); ///< since the trace began
[[nodiscard]] QString channelName(const Trace& trace, std::size_t place);

} // namespace loadwarden::ui
