#pragma once

#include "core/cycle/printout.h"
#include "core/cycle/trace/trace_findings.h"
#include "core/loads/item.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// How a cycle came to an end; unknown: not ended.
enum class CycleOutcome : std::uint8_t { unknown, ended, aborted };

/// The phase in which a cycle was aborted; unknown is a statement, too.
enum class AbortPhase : std::uint8_t {
    unknown,
    heating,
    airRemoval,
    exposure,
    exhaust,
    drying,
    aeration
};

/// Whose clock a cycle's start and end show.
enum class ClockSource : std::uint8_t { facility, sterilizer };

struct Alarm {
    std::string code;
    Act act;

    friend bool operator==(const Alarm&, const Alarm&) = default;
};

/// A process challenge device and what was in it.
struct ProcessChallengeDevice {
    std::string id;
    std::vector<ChemicalIndicator> indicators;
    std::vector<Vial> vials;

    friend bool operator==(const ProcessChallengeDevice&, const ProcessChallengeDevice&) = default;
};

struct AerationRun {
    Act start;
    std::optional<Act> end;
    std::optional<Act> interrupted;
    std::int64_t celsiusHundredths = 0;

    friend bool operator==(const AerationRun&, const AerationRun&) = default;
};

struct ImmediateUse {
    std::string reason;
    std::string caseReference;
    std::optional<bool> forStorage;

    friend bool operator==(const ImmediateUse&, const ImmediateUse&) = default;
};

enum class ReviewAnswer : std::uint8_t { isolated, notIsolated };

/// A lead's or supervisor's answer to one finding as it stood.
struct Review {
    std::string finding;
    std::string subject;
    ReviewAnswer answer = ReviewAnswer::isolated;
    std::string why;
    Instant newestSeen{};
    Act act;

    friend bool operator==(const Review&, const Review&) = default;
};

/// Everything recorded of one load.
struct LoadRecord {
    std::string lot;
    std::string operatedBy;
    ClockSource clock = ClockSource::facility;
    std::optional<Instant> start; ///< as shown; corrected times are derived by assemble
    std::optional<Instant> end;
    std::optional<std::int64_t> counter;
    CycleOutcome outcome = CycleOutcome::unknown;
    std::optional<AbortPhase> abortPhase; ///< nullopt: not stated
    std::vector<Alarm> alarms;
    std::optional<Printout> printout;
    std::optional<Act> printoutLost;
    std::vector<PrintoutStatement> printoutAnswers;
    std::vector<ParameterReading> readings;
    std::vector<TraceFindings> traces;
    std::vector<LostReading> lostReadings;
    std::vector<Act> verifications;
    std::vector<ProcessChallengeDevice> pcds;
    std::vector<Item> items;
    std::vector<AerationRun> aerationRuns;
    std::optional<ImmediateUse> immediateUse;
    std::vector<Review> reviews;

    friend bool operator==(const LoadRecord&, const LoadRecord&) = default;
};

} // namespace loadwarden
