#pragma once

#include "core/cycle/trace/evaluate.h"

#include <QString>

namespace loadwarden::ui {

/// The picture of a trace in sentences, for somebody who does not see it.
[[nodiscard]] QString spokenTrace(const Trace& trace, const TraceEvaluation& evaluation,
                                  const AskedOfTrace& asked, bool simulated);

} // namespace loadwarden::ui
