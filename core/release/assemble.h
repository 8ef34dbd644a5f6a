#pragma once

#include "core/release/evidence.h"

namespace loadwarden {

/// Makes a record ready to be decided on: resolves products, lots, packagings and incubators by
/// name, puts readings in order, corrects the sterilizer's clock, finds facility days, test periods
/// and which controls are in reach of which vial. Pure; knows neither policy nor moment.
[[nodiscard]] Evidence assemble(EvidenceRecord record);

} // namespace loadwarden
