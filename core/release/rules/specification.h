#pragma once

#include "core/release/evidence.h"

#include <vector>

namespace loadwarden::rules {

// The part of the rule `physical` that looks at the cycle specification, which must be there. It
// asks neither policy nor moment, so assemble does it.

/// What is wrong with a specification that says too little, asks less of the record than its
/// program is set to, contradicts itself, or is not of this world.
[[nodiscard]] std::vector<SpecificationFault> specificationFaults(const EvidenceRecord& record);

/// Whether the specification lacks a limit of a parameter that must have one.
[[nodiscard]] bool isLimitMissing(const EvidenceRecord& record, Parameter parameter);

/// Whether the sterilizer records a parameter: ethylene oxide's concentration and humidity not
/// always.
[[nodiscard]] bool isRecorded(const EvidenceRecord& record, Parameter parameter);

} // namespace loadwarden::rules
