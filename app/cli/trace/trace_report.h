#pragma once

#include "core/cycle/specification.h"
#include "core/cycle/trace/evaluate.h"
#include "core/cycle/trace/mapping_proposal.h"
#include "core/cycle/trace/trace_reader.h"

#include <string>
#include <vector>

namespace loadwarden::cli {

/// One file that was read and evaluated.
struct TraceReport {
    std::string name; ///< of the file
    bool isSimulated = false;
    TraceMapping mapping;
    std::vector<ProposalNote> notes; ///< where the mapping is only proposed
    bool isProposed = false;
    CycleSpecification specification;
    TraceReading reading;
    AskedOfTrace asked;
    TraceEvaluation evaluation;
};

/// What was asked, what was found, and whether that is shown.
struct TraceAnswer {
    std::string key; ///< for programs
    std::string asked;
    std::string found;
    Shown shown = Shown::notAsked;
};

/// Those that were asked.
[[nodiscard]] std::vector<TraceAnswer> answersOf(const TraceReport& report);

/// "4:03", "4:03.5", "1:02:03": a length of time, cut to tenths of a second; "-" where it is not
/// known.
[[nodiscard]] std::string lengthText(double seconds);
/// "4:03 to 4:05", "4:03 or longer".
[[nodiscard]] std::string lengthText(const Bounds& seconds);

/// A number with so many decimals; "-" where it is not known.
[[nodiscard]] std::string numberText(double value, int decimals);

/// How a report ends: 0 all that was asked is met, 1 something is not met or open, or nothing was
/// asked, 2 the trace is unusable.
[[nodiscard]] int exitCodeOf(const TraceReport& report);

/// Appends the report as lines for people.
void appendReport(std::string& out, const TraceReport& report);

/// Appends it as one line of JSON.
void appendReportJson(std::string& out, const TraceReport& report);

/// What stands below all reports.
[[nodiscard]] std::string traceCautions();

} // namespace loadwarden::cli
