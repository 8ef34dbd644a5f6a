#pragma once

#include "core/acts/entry.h"
#include "core/release/decision.h"

#include <span>
#include <string>
#include <vector>

namespace loadwarden::tests {

/// What must hold of the decision on load ld-1 of journal_support.h with an implant, asked of its
/// entries one by one, without the fold; a sentence for each that does not.
[[nodiscard]] std::vector<std::string> brokenPredicates(std::span<const Entry> entries,
                                                        const Decision& decision);

} // namespace loadwarden::tests
