#pragma once

#include "core/acts/fold/facts.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace loadwarden {

/// The evidence digest (ACTS.md, 6) of the entries with those numbers, of a policy's digest and of
/// the bound specification (null: none), in hexadecimal.
[[nodiscard]] std::string evidenceDigest(EntrySpan entries, const std::vector<std::int64_t>& taken,
                                         const std::optional<std::string>& policy,
                                         const Fact* specification);

} // namespace loadwarden
