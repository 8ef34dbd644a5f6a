#pragma once

#include "core/acts/kinds/values.h"
#include "core/sterilizers/sterilizer_record.h"

#include <optional>
#include <string>

// Test cycles and process failures (ACTS.md, 4).

namespace loadwarden {

struct TestConditionsRecorded {
    std::optional<bool> chamberEmpty;
    std::optional<bool> dryingRun;
    std::optional<TypedNumber> exposureMinutes;
    std::optional<TypedNumber> exposureCelsius;
};

struct LeakRead {
    std::optional<TypedNumber> settledMinutes;
    std::optional<TypedNumber> minutes;
    std::optional<TypedNumber> riseMbar;
};

struct TestPhysicalJudged {
    bool good = false;
};

struct TestVoidExplained {
    std::string why;
};

struct FailureRecorded {
    FailureKind kind = FailureKind::physical;
};

struct FailureResolved {
    bool causeKnown = false;
    Reach reach = Reach::thatLoad;
    std::string what;
};

} // namespace loadwarden
