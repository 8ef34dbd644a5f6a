#pragma once

#include "core/quantities/zone.h"
#include "core/release/decision.h"

#include <string>

namespace loadwarden::cli {

/// For whom and for when a decision is said.
struct Occasion {
    Zone zone; ///< of the facility
    Instant now{};
};

/// Appends a block of lines for a load: verdict first, then every reason, the worst first, then the
/// items that differ from the load or have reasons of their own, then when time will change it.
void appendPlain(std::string& out, const Decision& decision, const Occasion& occasion);

/// The same for a test cycle.
void appendPlain(std::string& out, const TestJudgement& judgement, const Occasion& occasion);

/// The caution that follows the last block.
void appendCaution(std::string& out);

} // namespace loadwarden::cli
