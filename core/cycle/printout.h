#pragma once

#include "core/cycle/quantity.h"
#include "core/quantities/act.h"

#include <cstdint>
#include <optional>
#include <string>

namespace loadwarden {

/// One value read from the sterilizer's record.
struct ParameterReading {
    Parameter parameter = Parameter::temperature;
    Quantity value;
    std::string typed; ///< the text as it was typed
    Act act;
};

/// The sterilizer's own record of a cycle; start and end by the sterilizer's clock.
struct Printout {
    std::string program;    ///< empty: left out
    std::string sterilizer; ///< empty: left out
    std::optional<std::int64_t> counter;
    std::optional<Instant> start;
    std::optional<Instant> end;
    Act act;
};

/// What somebody said of a printout that does not agree with the record.
enum class PrintoutAnswer : std::uint8_t { recordRight, wrongCycle, wrongSterilizer };

struct PrintoutStatement {
    PrintoutAnswer answer = PrintoutAnswer::recordRight;
    Act act;
};

struct LostReading {
    Parameter parameter = Parameter::temperature;
    Act act;
};

} // namespace loadwarden
