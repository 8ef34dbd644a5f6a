#pragma once

#include "core/acts/fold/cycle_fold.h"
#include "core/release/evidence.h"

#include <string>
#include <vector>

namespace loadwarden {

/// Gives cycles and vials of a record names of which none comes twice: the lot control number of a
/// cycle, its id where another has that number, and of a vial its id, with a number where it stands
/// in another cycle, too. Then names by them the cycles of incidents and controls, which so far
/// stand there with their ids. `cycleIds` stand beside the cycles of the record's sterilizer.
void nameCycles(const FactBook& book, const CycleFold& own,
                const std::vector<std::string>& cycleIds, EvidenceRecord& record);

} // namespace loadwarden
