#pragma once

#include "core/indicators/reading_result.h"
#include "core/store/read_snapshot.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// A reading check that somebody took.
struct CheckTaken {
    std::string reader; ///< st-
    std::string name;
    Instant at{};
    std::int64_t number = 0; ///< which check it was
    std::int64_t of = 0;     ///< indicators read
    std::int64_t right = 0;
    std::int64_t acceptedWhatFails = 0;
};

/// The newest check of everybody who ever took one, the newest first. It is a hint for whoever
/// signs and teaches; nothing is decided by it. Throws StoreError.
[[nodiscard]] std::vector<CheckTaken> newestChecks(ReadSnapshot& snapshot);

/// How far readers agree, of the check that most of them took (of several the newest); a reader's
/// first answers count. nullopt: no two took the same one. Throws StoreError.
struct ReadersAgree {
    std::int64_t number = 0;
    CheckAgreement agreement;
};
[[nodiscard]] std::optional<ReadersAgree> agreementOfReaders(ReadSnapshot& snapshot);

} // namespace loadwarden
