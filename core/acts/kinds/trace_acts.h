#pragma once

#include "core/cycle/trace/trace_findings.h"
#include "core/journal/envelope.h"

#include <cstdint>
#include <optional>
#include <string>

// What was computed of a recorder's file (ACTS.md, 4).

namespace loadwarden {

struct TraceRead {
    std::string content; ///< hash of the file's bytes, by which the journal keeps them
    std::string fileName;
    std::int64_t bytes = 0;
    std::string mapping;              ///< how the text was read, JSON
    std::int64_t evaluation = 1;      ///< version of what computed it
    std::optional<JournalTime> start; ///< by the sterilizer's clock
    TraceFindings findings;           ///< its id, start and act stand in the entry
};

/// Whether a trace shows by itself that the cycle failed: its exposure was not held as it should,
/// and not long enough besides.
[[nodiscard]] inline bool showsFailure(const TraceFindings& findings)
{
    return findings.exposure == Shown::notMet
           || ((findings.uninterrupted == Shown::notMet || findings.notBelow == Shown::notMet)
               && findings.exposure != Shown::met);
}

} // namespace loadwarden
