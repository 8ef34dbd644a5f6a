#pragma once

#include "core/acts/kinds/values.h"
#include "core/cycle/printout.h"
#include "core/cycle/specification.h"
#include "core/journal/envelope.h"
#include "core/loads/load_record.h"

#include <cstdint>
#include <optional>
#include <string>

// The course of a cycle and the sterilizer's own record of it (ACTS.md, 4).

namespace loadwarden {

struct CycleReserved {
    std::string lot; ///< lot control number
    Purpose purpose = Purpose::routine;
    Method method = Method::unknown; ///< where there is no specification
    std::string cycleType;           ///< where there is no specification; empty: unknown
};

struct CycleStarted {
    ClockSource clock = ClockSource::facility;
    JournalTime shown; ///< by that clock
    std::optional<std::int64_t> counter;
};

struct CycleEnded {
    JournalTime shown; ///< by the clock by which it started
    CycleOutcome outcome = CycleOutcome::ended;
    std::optional<AbortPhase> abortPhase;
    std::optional<std::int64_t> counter;
};

struct CycleUnloaded {};

struct PrintoutRecorded {
    std::string program;    ///< empty: left out
    std::string sterilizer; ///< empty: left out
    std::optional<std::int64_t> counter;
    std::optional<JournalTime> start;
    std::optional<JournalTime> end;
};

struct PrintoutAnswered {
    PrintoutAnswer answer = PrintoutAnswer::recordRight;
    std::optional<PrintoutField> field; ///< what record-right confirms
};

struct PrintoutLost {};

struct PhysicalRead {
    Parameter parameter = Parameter::temperature;
    TypedQuantity value;
};

struct PhysicalLost {
    Parameter parameter = Parameter::temperature;
};

struct PhysicalVerified {};

struct AlarmRecorded {
    std::string code;
};

struct AerationStarted {
    TypedNumber celsius;
};

struct AerationEnded {};

struct AerationInterrupted {};

struct ImmediateUseStated {
    std::string why;
    std::string caseReference;
    std::optional<bool> forStorage;
};

} // namespace loadwarden
