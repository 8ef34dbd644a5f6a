#pragma once

#include "core/cycle/trace/shown.h"
#include "core/quantities/act.h"
#include "core/quantities/word.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace loadwarden {

/// What was computed of one recording of a cycle: figures in integers, so that it means the same
/// wherever it is read. `start` is by the sterilizer's clock.
struct TraceFindings {
    std::string id;
    std::string specification; ///< by which it was evaluated; empty: left out
    std::optional<std::int64_t> revision;
    std::optional<std::int64_t> counter;
    std::optional<Instant> start;
    std::vector<std::string> defects;

    Shown exposure = Shown::notAsked; ///< the least exposure, held without a break
    Shown uninterrupted = Shown::notAsked;
    Shown notBelow = Shown::notAsked; ///< the specification's band, while it was held
    Shown notAbove = Shown::notAsked;
    Shown saturated = Shown::notAsked;
    Shown drying = Shown::notAsked;

    std::optional<std::int64_t> leastCelsiusHundredths; ///< while it was held
    std::optional<std::int64_t> greatestCelsiusHundredths;
    std::optional<std::int64_t> exposureLeastMs; ///< longer than that for sure
    std::optional<std::int64_t> exposureMostMs;
    std::optional<std::int64_t> dryingLeastMs;
    std::optional<std::int64_t> dryingMostMs;

    Act act;

    friend bool operator==(const TraceFindings&, const TraceFindings&) = default;
};

/// What was not asked has no word.
inline constexpr Word<Shown> shownWords[] = {
    {"met", Shown::met},
    {"open", Shown::open},
    {"not-met", Shown::notMet},
};

} // namespace loadwarden
