#pragma once

#include "core/exchange/evidence/field.h"
#include "core/exchange/evidence/record_draft.h"

namespace loadwarden::evidence_format {

/// What concerns several parts of a record at once: names that stand twice, the load among its own
/// sterilizer's other cycles, the purpose of the specification. False: complaint is filled in.
[[nodiscard]] bool checkAcross(const RecordDraft& draft, Complaint& complaint);

} // namespace loadwarden::evidence_format
