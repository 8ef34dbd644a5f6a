#pragma once

#include "core/cycle/trace/trace.h"
#include "core/cycle/trace/trace_defect.h"
#include "core/cycle/trace/trace_limits.h"
#include "core/cycle/trace/trace_mapping.h"
#include "core/quantities/date.h"
#include "core/quantities/pressure.h"

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Steps between samples, in seconds; NaN with fewer than two samples. What is computed from a
/// trace is uncertain by them.
struct SamplingFacts {
    double typical = std::numeric_limits<double>::quiet_NaN(); ///< the median
    double least = std::numeric_limits<double>::quiet_NaN();
    double largest = std::numeric_limits<double>::quiet_NaN();
};

/// When the first sample was taken, by the recorder's clock and in its zone, as far as it says so.
struct TraceStart {
    std::optional<Date> date;
    std::optional<double> secondsOfDay;
};

/// What was read, and everything that must be said of it.
struct TraceReading {
    Trace trace;                     ///< the channels that the mapping uses, in its order
    std::vector<std::int64_t> lines; ///< of each sample, where it stands in the file
    SamplingFacts sampling;
    TraceStart start;
    std::string counter;              ///< the recorder's cycle counter, as written; may be empty
    std::vector<TraceDefect> defects; ///< those of the file, then by line; mostDefectsTold at most
    TraceDefectCounts counts{};       ///< of all defects, told or not

    [[nodiscard]] std::int64_t count(TraceDefectKind kind) const
    {
        return counts[static_cast<std::size_t>(kind)];
    }
};

inline constexpr std::size_t mostDefectsTold = 1000;

/// Reads a recorder's text. Nothing is repaired: what is wrong becomes a defect that says whether
/// the sample was kept, and a value that cannot be read is NaN. Gauge pressures need the site's
/// atmosphere. Answers for any bytes and any mapping; throws only for want of memory.
[[nodiscard]] TraceReading readTrace(std::string_view bytes, const TraceMapping& mapping,
                                     const std::optional<AbsolutePressure>& atmosphere,
                                     const TraceLimits& limits = {});

/// Whether there are samples and none of the defects is of a kind that makes a trace unusable.
[[nodiscard]] bool isUsable(const TraceReading& reading,
                            const TraceDefectSet& unusable = unusableByDefault());

/// What speaks against reading a file by this mapping, found at its beginning: another header,
/// another number of fields, times or a channel that cannot be read in any of the first samples.
/// Empty: it fits.
[[nodiscard]] std::vector<TraceDefect> misfitsOf(std::string_view bytes,
                                                 const TraceMapping& mapping);

} // namespace loadwarden
