#pragma once

#include "core/acts/fold/evidence_fold.h"
#include "core/acts/fold/folding.h"

#include <string_view>
#include <vector>

namespace loadwarden {

/// Every entry about a cycle and what became of it, in order.
[[nodiscard]] std::vector<HistoryLine> historyOf(const Folding& folding, std::string_view cycle);

/// The misfits among the entries about a cycle or in its evidence, and what is not understood about
/// anything that this evidence is about, once each, in order.
[[nodiscard]] std::vector<Misfit> misfitsAbout(const Folding& folding, std::string_view cycle);

} // namespace loadwarden
