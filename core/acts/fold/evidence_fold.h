#pragma once

#include "core/acts/entry.h"
#include "core/acts/fold/misfit.h"
#include "core/release/evidence.h"

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// Where a load stands, from its entries alone (ACTS.md, 6).
enum class Phase : std::uint8_t {
    beingLoaded,
    running,
    awaitingDecision,
    disposed,
    evidenceChanged,
    imported ///< history of the time before the journal: nothing is decided or signed
};

/// What became of an entry.
enum class LineState : std::uint8_t {
    stands,  ///< counts as it is, or is a correction that took effect
    amended, ///< another version counts instead of it
    beside,  ///< counts beside another version, which it could not take away
    struck,  ///< voided
    withoutEffect,
    notUnderstood
};

/// One entry in the history of a load.
struct HistoryLine {
    std::int64_t seq = 0;
    LineState state = LineState::stands;
    std::int64_t by = 0; ///< seq of the entry that amended or struck it; 0: none

    friend bool operator==(const HistoryLine&, const HistoryLine&) = default;
};

/// The evidence of a load or a test as the journal has it, and what belongs to it.
struct FoldedEvidence {
    EvidenceRecord record;
    std::vector<std::string> itemIds; ///< it-, beside record.load.items
    std::map<std::string, std::string> pcdMarks; ///< what is written on a PCD, by pd-
    std::string sterilizer;           ///< sz-; empty: not known
    Phase phase = Phase::beingLoaded;
    std::optional<std::string> policy; ///< digest of the policy bound; nullopt: none recorded
    std::string digest;                ///< evidence digest, hexadecimal
    std::vector<std::int64_t> entries; ///< those that went into the evidence, in order
    std::vector<Misfit> misfits;       ///< in the order of their entries
    std::vector<HistoryLine> history;  ///< every entry about the cycle, in order
    bool isUnderstood = true; ///< no entry about it, or about what its evidence is about, is of an
                              ///< unknown kind or version
};

/// Folds entries into the evidence of one cycle. They stand in the order of seq and have at least
/// all those that the cycle's evidence can rest on; stop them earlier to see it as of that entry.
/// Pure and total: whatever they say, there is an answer.
[[nodiscard]] FoldedEvidence foldEvidence(std::span<const Entry* const> entries,
                                          std::string_view cycle);
[[nodiscard]] FoldedEvidence foldEvidence(std::span<const Entry> entries, std::string_view cycle);

/// The entries up to and with one.
[[nodiscard]] std::span<const Entry> entriesUpTo(std::span<const Entry> entries, std::int64_t seq);

} // namespace loadwarden
