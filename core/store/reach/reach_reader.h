#pragma once

#include "core/acts/entry.h"
#include "core/quantities/pressure.h"
#include "core/store/journal_reader.h"
#include "core/store/reach/cycles_in_reach.h"
#include "core/store/reach/entry_cache.h"
#include "core/store/reach/reach_part.h"

#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tuple>
#include <unordered_map>
#include <utility>
#include <vector>

namespace loadwarden {

/// Reads the entries on which the evidence of cycles rests, as foldEvidence() takes them
/// (core/acts/ACTS.md, 6): those in reach, and not the journal. Of one snapshot, as of one entry;
/// what several cycles need is looked up once. Not to be kept longer than its snapshot. Everything
/// throws StoreError; an entry that an index names and that is not there is StoreFault::damaged.
class ReachReader {
public:
    /// Entries after `upTo` are as if they were not there. The snapshot and the cache, which is of
    /// this journal, outlive the reader. Throws StoreFault::older when the index tables must be
    /// filled anew first (rebuildIndexes()).
    ReachReader(ReadSnapshot& snapshot, EntryCache& cache, std::int64_t upTo = toTheEnd);

    /// In the order of seq; at least what the cycle is: of one that nobody named only the
    /// registers. They are there as long as the reader.
    [[nodiscard]] std::vector<const Entry*> entriesFor(std::string_view cycle);

private:
    class Gathering;

    [[nodiscard]] const ReachPart& ofCycle(const std::string& cycle);
    [[nodiscard]] const ReachPart& about(const std::string& id);
    [[nodiscard]] std::vector<std::int64_t> seqsAbout(const std::string& id);
    [[nodiscard]] const ReachPart& own(const std::string& id);
    [[nodiscard]] const ReachPart& ownOfAll(std::string_view prefix);
    [[nodiscard]] const ReachPart& amended(std::int64_t seq);
    [[nodiscard]] const std::vector<std::string>& lotsLike(const std::string& lot);
    [[nodiscard]] bool reachesLot(const PlacedIndicator& vial);
    [[nodiscard]] const std::vector<std::string>& controls(const std::string& reason,
                                                           std::int64_t from, std::int64_t to);
    [[nodiscard]] SharedEntries entries(const std::vector<std::int64_t>& seqs);
    void read(std::span<const std::int64_t> seqs, SharedEntries& into);
    [[nodiscard]] const SterilizerOwn& sterilizer(const std::string& id);
    [[nodiscard]] std::span<const LeastValue> leastValuesOf(const std::string& sterilizer);
    [[nodiscard]] std::vector<AbsolutePressure> atmospheres();
    [[nodiscard]] bool mayPolicySayLot();

    using PartsById = std::unordered_map<std::string, ReachPart>;

    ReadSnapshot& m_snapshot;
    EntryCache& m_cache;
    std::int64_t m_upTo;
    CyclesInReach m_reach;
    PartsById m_ofCycle;
    PartsById m_about;
    PartsById m_own;
    PartsById m_ownOfAll; ///< by prefix
    std::unordered_map<std::int64_t, ReachPart> m_amended;
    std::unordered_map<std::string, std::vector<std::string>> m_lotsLike;
    std::map<std::tuple<std::string, std::int64_t, std::int64_t>, std::vector<std::string>>
        m_controls; ///< by what they are for, and between which times
    std::map<std::pair<std::string, std::string>, bool> m_reachesLot; ///< by product and lot
    std::map<std::string, SterilizerOwn> m_sterilizers;
    std::map<std::string, std::vector<LeastValue>> m_leastValues;
    std::optional<bool> m_policySaysLot;
};

} // namespace loadwarden
