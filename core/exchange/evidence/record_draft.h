#pragma once

#include "core/release/evidence.h"

namespace loadwarden::evidence_format {

/// A record while it is read.
struct RecordDraft {
    EvidenceRecord record;
    bool zoneIsKnown = false;
    bool specificationIsNamed = false; ///< it came from the library
};

} // namespace loadwarden::evidence_format
