#pragma once

#include "core/release/evidence.h"

namespace loadwarden::evidence_format {

/// A record while it is read. The tables know it as the record that it is.
struct RecordDraft : EvidenceRecord {
    bool zoneIsKnown = false;
    bool specificationIsNamed = false; ///< it came from the library
};

} // namespace loadwarden::evidence_format
