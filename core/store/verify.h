#pragma once

#include "core/journal/chain.h"
#include "core/journal/seal.h"
#include "core/quantities/instant.h"
#include "core/store/connection.h"
#include "core/store/journal_fault.h"
#include "core/store/progress.h"
#include "core/store/seal_keys.h"

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Reads "SEQ:HASH", the head of a journal as it stands on paper; nullopt for anything else.
[[nodiscard]] std::optional<Head> parseHead(std::string_view text);

/// What to verify, and against what.
struct VerifyRequest {
    /// Begin behind this entry, which is trusted (a seal's, say); none: the whole journal.
    std::optional<Head> after;
    std::vector<Head> expected; ///< heads from paper
    std::vector<Seal> seals;    ///< seals from elsewhere, beside those of the database
    /// The keys whose seals are believed. Empty: those that the journal itself names
    /// (sealKeysOf()), among which a forger who writes it anew may put one of his own.
    std::vector<SealPublicKey> keys;
    /// Ask the engine to check the file's pages too, where it can. Slow for a large file.
    bool pages = true;
};

/// The clock was set back, or two workstations' clocks differ (core/journal/FORMAT.md).
struct ClockStep {
    std::int64_t seq = 0; ///< the entry that was recorded earlier than the one before
    Duration behind;

    friend bool operator==(const ClockStep&, const ClockStep&) = default;
};

/// The seals of one key that hold.
struct SealsOfKey {
    JournalKey key;
    std::int64_t held = 0;
    std::int64_t from = 0; ///< the first entry that such a seal vouches for; 0: none does
    std::int64_t to = 0;   ///< the newest

    friend bool operator==(const SealsOfKey& a, const SealsOfKey& b) = default;
};

struct VerifyReport {
    std::int64_t entries = 0;          ///< looked at
    Head head;                         ///< the newest, as stored
    std::vector<JournalFault> faults;  ///< the first thousand
    std::int64_t faultCount = 0;       ///< all of them
    std::vector<ClockStep> clockSteps; ///< no faults; the first thousand
    std::int64_t sealsHeld = 0;        ///< seals that are genuine and fit
    std::int64_t sealedTo = 0;         ///< the newest entry that such a seal vouches for; 0: none
    std::vector<SealsOfKey> sealKeys;  ///< by the keys that the journal names, in their order
    bool cancelled = false;            ///< not all was looked at

    /// Everything was looked at and nothing was found.
    [[nodiscard]] bool sound() const { return faultCount == 0 && !cancelled; }
};

/// Verifies the journal as of one moment while others may go on working: the chain, every entry's
/// hash, the columns and tables beside it, the triggers, seals and expected heads. Throws
/// StoreError only when not even a first page can be read.
[[nodiscard]] VerifyReport verifyJournal(Connection& connection, const VerifyRequest& request,
                                         Progress& progress);

} // namespace loadwarden
