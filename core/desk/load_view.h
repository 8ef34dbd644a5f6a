#pragma once

#include "core/acts/fold/evidence_fold.h"
#include "core/release/decision.h"
#include "core/release/policy.h"
#include "core/store/journal_reader.h"
#include "core/store/reach/entry_cache.h"
#include "core/store/reach/reach_reader.h"
#include "core/store/read_snapshot.h"

#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A load or a test as the journal has it, and what the rules say of it.
struct CycleView {
    std::string id;        ///< ld-
    std::int64_t seen = 0; ///< the newest entry of the journal that went into this view
    FoldedEvidence folded;
    std::optional<Verdict> signedAs;     ///< meaning of the newest disposition
    std::vector<SignedItem> signedItems; ///< what it says of each item
    std::optional<Entry> imported;       ///< of a load of the time before: what its old record says
    Policy policy;                       ///< by which it was decided
    Instant now{};                       ///< for which it was decided
    Decision decision;                   ///< of a load
    TestJudgement judgement;             ///< of a test

    [[nodiscard]] bool isTest() const { return folded.record.test.has_value(); }
    /// History: nothing is decided about it.
    [[nodiscard]] bool isImported() const { return folded.phase == Phase::imported; }
    [[nodiscard]] const std::string& lot() const
    {
        if (imported) {
            return std::get<HistoryImported>(imported->act).lot;
        }
        return isTest() ? folded.record.test->lot : folded.record.load.lot;
    }
};

/// Whether an implant is in a load, or may be: of an item it is not said that it is none.
[[nodiscard]] bool mayHoldImplant(const CycleView& view);

/// Cycles as of an entry, each decided for the same moment: what several of them rest on is read
/// once, so that a day costs far less than its cycles one by one. Not to be kept longer than its
/// snapshot. Throws StoreError.
class CycleViews {
public:
    CycleViews(ReadSnapshot& snapshot, EntryCache& cache, Instant now,
               std::int64_t upTo = toTheEnd);

    /// nullopt where nothing was ever recorded of it. Throws StoreFault::damaged where the journal
    /// cannot be read. Where its policy is none that this program can read, it is not understood.
    [[nodiscard]] std::optional<CycleView> of(std::string_view cycle);

private:
    [[nodiscard]] const std::optional<Policy>& policyOf(std::span<const Entry* const> entries,
                                                        const std::optional<std::string>& digest);

    ReachReader m_reach;
    Instant m_now;
    std::int64_t m_seen;                                                    ///< the newest entry
    std::map<std::optional<std::string>, std::optional<Policy>> m_policies; ///< by digest
};

/// One cycle alone.
[[nodiscard]] std::optional<CycleView> viewCycle(ReadSnapshot& snapshot, EntryCache& cache,
                                                 std::string_view cycle, Instant now,
                                                 std::int64_t upTo = toTheEnd);

/// The newest entry that had been recorded by a moment; 0: none. Where a clock was set back, one of
/// those around it.
[[nodiscard]] std::int64_t newestAt(ReadSnapshot& snapshot, Instant moment);

/// Whether the load, or any item of it, is decided worse now than it was signed.
[[nodiscard]] bool isWorseThanSigned(const CycleView& view);

/// What was decided, as far as a signer sees it: verdicts and findings in one text that differs
/// where any of them does.
[[nodiscard]] std::string sightOf(const CycleView& view);

/// The first 16 hexadecimal digits of a hash of that text, the cycle, and the newest entry that was
/// seen with it.
[[nodiscard]] std::string sightDigest(const CycleView& view, std::int64_t seen);

/// The cycles that somebody may mean: by id, or by lot control number, the case of a to z apart.
/// Where a load of this journal bears the number, none of those that were imported.
[[nodiscard]] std::vector<std::string> cyclesNamed(ReadSnapshot& snapshot, std::string_view name);

/// The only one of them; nullopt where there is none, or several.
[[nodiscard]] std::optional<std::string> findCycle(ReadSnapshot& snapshot, std::string_view name);

} // namespace loadwarden
