#pragma once

#include "core/indicators/indicator.h"
#include "core/journal/envelope.h"
#include "core/sterilizers/sterilizer_record.h"

#include <cstdint>
#include <string>

// What is recorded of sterilizers, incubators and incidents (ACTS.md, 3).

namespace loadwarden {

struct ClockCompared {
    JournalTime from;         ///< since when, as the sterilizer's clock shows it
    std::int64_t seconds = 0; ///< sterilizer's clock minus facility's
};

struct SterilizerTakenOut {
    ServiceState state = ServiceState::outOfService;
    std::string why;
};

struct SterilizerReturned {
    std::string why;
};

struct AlarmClassed {
    ListedAlarm alarm;
};

struct IncubatorOutOfRange {};

struct IncubatorInRange {};

struct IncidentOpened {};

struct IncidentFound {
    FoundToBe was = FoundToBe::control;
    std::string why;
};

struct IncidentClosed {
    std::string why;
};

} // namespace loadwarden
