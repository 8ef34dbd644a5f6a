#pragma once

#include "core/desk/load_view.h"
#include "core/desk/names.h"
#include "core/desk/service_now.h"
#include "core/journal/chain.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// A vial of a load that has not been read without a doubt.
struct AwaitedVial {
    std::string lot; ///< of the load
    Vial vial;
    std::optional<Instant> dueAt; ///< it may be read for release from then on; nullopt: not known
    bool hasImplant = false;      ///< the load holds one, or may
};

/// A sterilizer as one shift leaves it to the next.
struct LeftSterilizer {
    std::string id; ///< sz-
    ServiceNow service;
    Instant periodBegin{};         ///< of the test period that runs
    bool hasTests = false;         ///< a Bowie-Dick test was run on it in the days looked back
    std::optional<CycleView> test; ///< the newest of the period
};

/// What was released before its evidence was complete, so that somebody still owes an answer.
struct OwedEvidence {
    std::string lot;
    std::string label;
    Entry released; ///< EmergencyReleased
};

/// What one shift leaves to the next.
struct Handover {
    Instant now{};
    std::vector<CycleView> running;   ///< being loaded or running
    std::vector<AwaitedVial> vials;   ///< the first due first
    std::vector<CycleView> held;      ///< loads that ended and are not signed, are signed to stay,
                                      ///< or are decided worse now
    std::vector<std::string> changed; ///< lots of others, begun within changedReach, of which
                                      ///< something was recorded since they were signed
    std::vector<OwedEvidence> owed;   ///< of those
    std::vector<LeftSterilizer> sterilizers;
    Names names;
    Head head; ///< the newest entry that was seen
};

/// How far back cycles are looked at.
inline constexpr Duration handoverReach = Duration::hours(35 * 24);

inline constexpr Duration changedReach = Duration::hours(48);

/// What stands as of entry `upTo`. Throws StoreError.
[[nodiscard]] Handover handoverAt(ReadSnapshot& snapshot, EntryCache& cache, const Zone& zone,
                                  Instant now, std::int64_t upTo = toTheEnd);

} // namespace loadwarden
