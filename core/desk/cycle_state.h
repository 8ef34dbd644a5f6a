#pragma once

#include "core/acts/fold/facts.h"
#include "core/sterilizers/sterilizer_record.h"

#include <map>
#include <optional>
#include <set>
#include <span>
#include <string>
#include <string_view>

namespace loadwarden {

/// What the desk asks of a cycle before it lets an act about it in: from its own entries alone.
struct CycleState {
    bool reserved = false;
    Purpose purpose = Purpose::routine;
    std::string lot;
    std::string sterilizer;
    std::optional<Instant> start; ///< by the facility's clock, as near as is known
    std::optional<Instant> end;
    bool started = false;
    bool ended = false;
    std::set<std::string, std::less<>> mentions; ///< every id that its entries are about, but for
                                                 ///< items that left it and what is in them
    std::map<std::string, std::string, std::less<>> labels; ///< of the items that are in it
    std::map<std::string, bool, std::less<>> released;      ///< items, by the newest disposition

    [[nodiscard]] bool isTest() const
    {
        return purpose != Purpose::routine && purpose != Purpose::immediateUse;
    }
};

/// `entries` are those about the cycle, in order.
[[nodiscard]] CycleState stateOfCycle(std::span<const Entry> entries, std::string_view cycle);

/// The end of a cycle that was typed to the minute. In the minute of its start it was not before
/// it, whatever the seconds: then it is taken as the start, the earliest that it can have been.
[[nodiscard]] JournalTime endAsTyped(const JournalTime& typed, const CycleState& state);

} // namespace loadwarden
