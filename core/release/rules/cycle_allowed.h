#pragma once

#include "core/release/evidence.h"

namespace loadwarden::rules {

/// The part of the rule `cycle allowed` that asks neither policy nor moment, so that assemble does
/// it: how every allowed cycle of the items' devices compares with the program. The specification
/// must be there.
void compareAllowed(EvidenceRecord& record);

} // namespace loadwarden::rules
