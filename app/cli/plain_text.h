#pragma once

#include "app/cli/entries.h"
#include "core/quantities/zone.h"
#include "core/release/decision.h"

#include <string>

namespace loadwarden::cli {

/// Of what, for whom and for when a decision is said.
struct Occasion {
    std::string record; ///< the record's name for people
    Zone zone;          ///< of the facility
    Instant now{};
};

/// Appends a block of lines for a load: record, lot and verdict; the items by their verdicts; when
/// time will change it; then, of load and items together, what forces the verdicts, what is open
/// besides, and notes; the sources at the end. What is said of several items or subjects alike is
/// said once, and a general note that the run has explained already only named.
void appendPlain(std::string& out, const Decision& decision, const Occasion& occasion,
                 ExplainedNotes& explained);

/// The same for a test cycle.
void appendPlain(std::string& out, const TestJudgement& judgement, const Occasion& occasion,
                 ExplainedNotes& explained);

} // namespace loadwarden::cli
