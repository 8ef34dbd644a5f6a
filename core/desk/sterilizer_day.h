#pragma once

#include "core/acts/fold/evidence_fold.h"
#include "core/release/decision.h"
#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// A cycle as the day of its sterilizer shows it.
struct DayCycle {
    std::string id;  ///< ld-
    std::string lot; ///< empty: none
    Purpose purpose = Purpose::routine;
    Phase phase = Phase::beingLoaded;
    std::optional<Instant> start; ///< by the facility's clock, as near as is known
    std::optional<Instant> end;
    std::optional<Verdict> decided;  ///< of a load that has ended
    std::optional<Verdict> signedAs; ///< of a load that is signed
    bool isWorse = false;           ///< it, or an item of it, was signed better than is decided now
    std::int64_t behind = 0;        ///< items of it whose verdict is worse than the load's
    std::optional<TestResult> test; ///< of a test that has ended

    [[nodiscard]] bool isTest() const
    {
        return purpose != Purpose::routine && purpose != Purpose::immediateUse;
    }
};

/// Where a sterilizer stands with the air-removal test of its test period.
enum class PeriodTest : std::uint8_t { notAsked, notRun, notRead, failed, voided, passed };

/// A sterilizer, its state and its facility day.
struct SterilizerDay {
    std::string id; ///< sz-
    std::string name;
    std::string model;
    ServiceState service = ServiceState::outOfService;
    std::string why;              ///< it is not in service; empty: it was never returned
    std::optional<Instant> since; ///< when that was recorded
    PeriodTest test = PeriodTest::notAsked;
    Instant periodBegin{};           ///< of the test period that runs
    std::optional<DayCycle> now;     ///< what is being loaded or runs, the newest
    std::optional<DayCycle> testRun; ///< the period's newest test
    std::vector<DayCycle> cycles;    ///< of the facility day, in the order of their starts
};

} // namespace loadwarden
