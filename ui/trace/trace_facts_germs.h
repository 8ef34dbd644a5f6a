#pragma once

#include "ui/trace/trace_facts_list.h"

namespace loadwarden::ui {

/// What the lethality does to the populations that are given.
[[nodiscard]] TraceFactGroup germsOf(const TraceEvaluation& evaluation, const AskedOfTrace& asked);

/// What a negative biological indicator shows, and does not.
[[nodiscard]] QString negativeShows();
[[nodiscard]] QString negativeDoesNotShow();

} // namespace loadwarden::ui
