#pragma once

#include "core/store/read_snapshot.h"
#include "core/store/verify.h"

#include <string>

namespace loadwarden {

/// Checks the database's own seals, those from elsewhere and the expected heads against the hashes
/// that are stored; a part of verifyJournal(), which checks those hashes.
void verifySeals(ReadSnapshot& snapshot, const std::string& journalId, const VerifyRequest& request,
                 VerifyReport& report);

} // namespace loadwarden
