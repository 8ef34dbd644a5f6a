#pragma once

#include "core/journal/hash.h"
#include "core/quantities/instant.h"
#include "core/quantities/zone.h"

#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loadwarden {

/// How a time was had.
enum class TimeSource : std::uint8_t { clock, typed, printout };

/// A moment with the local time in which it was seen.
struct JournalTime {
    Instant at{};
    std::int32_t offsetMinutes = 0; ///< local time ahead of UTC

    friend bool operator==(const JournalTime&, const JournalTime&) = default;
};

/// The moment as somebody in that zone sees it.
[[nodiscard]] JournalTime journalTime(Instant at, const Zone& zone);

/// One entry of the journal (FORMAT.md). The body is the text of a JSON object in canonical form.
struct Envelope {
    std::int64_t seq = 0;
    Hash prev;
    JournalTime recordedAt;
    JournalTime happenedAt;
    TimeSource happenedFrom = TimeSource::clock;
    std::string actor; ///< empty: the program itself
    std::string role;  ///< empty with the actor
    std::string workstation;
    std::string kind;
    std::int32_t version = 1;
    std::vector<std::string> subjects;
    std::string reason;
    std::int64_t supersedes = 0; ///< seq of the entry corrected; 0: none
    std::int64_t basedOn = 0;    ///< newest entry that the author had seen; 0: none
    std::string body = "{}";

    friend bool operator==(const Envelope&, const Envelope&) = default;
};

/// What is wrong with bytes that should be an entry, in a sentence.
struct EnvelopeFault {
    std::string what;
};

/// The entry's bytes. The envelope must be in canonical form: readEnvelope() of the bytes gives it
/// back.
[[nodiscard]] std::string writeEnvelope(const Envelope& envelope);

/// Reads one entry and refuses whatever writeEnvelope() would not have written byte for byte. Which
/// kinds and bodies there are is not asked.
[[nodiscard]] std::variant<Envelope, EnvelopeFault> readEnvelope(std::string_view bytes);

} // namespace loadwarden
