#pragma once

#include "app/cli/entries.h"
#include "app/cli/streams.h"
#include "core/exchange/specification_library.h"
#include "core/quantities/clock.h"
#include "core/release/policy.h"

#include <array>
#include <cstdint>
#include <iosfwd>
#include <optional>
#include <string>

namespace loadwarden::cli {

/// What is the same for all records of a run.
struct DecideSettings {
    Policy policy;
    SpecificationLibrary specifications;
    std::optional<Instant> at; ///< overrules the record's own decideAt
    bool json = false;
    bool planned = false; ///< moments that have not come are meant
};

/// What a run came to.
struct DecideTally {
    std::array<std::int64_t, 3> loads{}; ///< by verdict
    std::array<std::int64_t, 4> tests{}; ///< by result
    std::int64_t apart = 0;              ///< loads with an item worse than the load
    std::int64_t withheld = 0;           ///< loads of which not all may go, tests not passed
    std::int64_t badRecords = 0;         ///< that could not be read
    std::int64_t badSources = 0;         ///< that could not be opened
    ExplainedNotes explained;            ///< in plain text

    [[nodiscard]] std::int64_t decided() const;
};

/// Decides on the records of one source in turn and writes when a batch is full or no more input is
/// at hand, so that a stream of any length needs the same memory and nobody waits for an answer.
/// Bad records are said on `streams.err` and passed over; a moment later than `clock` is said
/// there, unless it is planned, and decided for. Throws std::runtime_error when the source or the
/// output fails.
void decideStream(std::istream& evidence, const std::string& name, const DecideSettings& settings,
                  const Clock& clock, Streams streams, DecideTally& tally);

} // namespace loadwarden::cli
