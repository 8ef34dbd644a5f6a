#pragma once

#include "core/quantities/date.h"
#include "core/quantities/zone.h"
#include "core/store/read_snapshot.h"

#include <string>
#include <vector>

namespace loadwarden {

/// A cycle in a list.
struct CycleRow {
    std::string cycle; ///< ld-
    std::string lot;
    std::string sterilizer; ///< sz-
};

/// The cycles that were reserved on a facility day, in the order in which they were.
[[nodiscard]] std::vector<CycleRow> cyclesOfDay(ReadSnapshot& snapshot, Date day,
                                                const Zone& zone);

/// A vial or a control that is in an incubator and has no answer yet.
struct IncubatingRow {
    std::string id;        ///< bv- or bc-
    std::string cycle;     ///< ld-; empty: a control
    std::string product;   ///< pr-; empty: not known
    std::string incubator; ///< in-
    Instant since{};
    std::optional<Instant> due; ///< of the readout for release; nullopt: its product is not known
};

[[nodiscard]] std::vector<IncubatingRow> incubating(ReadSnapshot& snapshot);

} // namespace loadwarden
