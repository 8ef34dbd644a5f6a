#pragma once

#include "core/release/policy.h"
#include "core/store/read_snapshot.h"

namespace loadwarden {

/// The policy by which loads that start now will be decided; the default one where none that this
/// program can read was recorded. Throws StoreError.
[[nodiscard]] Policy policyNow(ReadSnapshot& snapshot);

} // namespace loadwarden
