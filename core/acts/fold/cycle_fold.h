#pragma once

#include "core/acts/fold/folding.h"
#include "core/cycle/specification.h"
#include "core/loads/load_record.h"
#include "core/sterilizers/sterilizer_record.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// What the entries say of one cycle: a load or a test.
struct CycleFold {
    std::string id;         ///< ld-
    std::string sterilizer; ///< sz-; empty: not known
    Purpose purpose = Purpose::routine;
    std::int64_t boundAt =
        0; ///< seq of its start, to which specification and policy are bound; 0: not started
    std::int64_t decidedAt = 0;          ///< seq of its newest disposition; 0: none
    bool isImported = false;             ///< its id is that of a load of the time before
    const Fact* specification = nullptr; ///< bound, and of the cycle's purpose
    std::vector<std::string> itemIds;    ///< it-, beside load.items
    std::map<std::string, std::string> pcdMarks; ///< what is written on a PCD, by pd-
    std::vector<std::string> placed;     ///< ci- and bv- that stand somewhere in the record
    LoadRecord load;                     ///< of a test without items and what belongs to them
    HistoryCycle cycle;                  ///< the same cycle as another's history, or a test, has it

    [[nodiscard]] bool isTest() const { return purpose > Purpose::immediateUse; }
    [[nodiscard]] bool hasStarted() const { return boundAt != 0; }
    [[nodiscard]] bool hasEnded() const { return load.outcome != CycleOutcome::unknown; }
};

/// Folds the entries about a cycle, and what they name, into its record. `own`: it is the cycle
/// that is asked about. Indicators name their products as boundProduct() does.
[[nodiscard]] CycleFold foldCycle(Folding& folding, std::string_view id, bool own);

} // namespace loadwarden
