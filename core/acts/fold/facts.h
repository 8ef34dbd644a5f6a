#pragma once

#include "core/acts/entry.h"
#include "core/acts/fold/misfit.h"
#include "core/acts/fold/subject_facts.h"
#include "core/acts/fold/versions.h"
#include "core/quantities/act.h"

#include <cstdint>
#include <span>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace loadwarden {

/// A fact with its corrections (ACTS.md, 5). Entries outlive it.
struct Fact {
    const Entry* origin = nullptr;
    Versions chain;                    ///< origin, then every correction, also without effect
    Versions counting;                 ///< the versions that count; the first is the current one
    const Entry* replacedBy = nullptr; ///< the newest amendment that took versions away
    const Entry* struckBy = nullptr;   ///< the voiding, where it was struck

    [[nodiscard]] bool stands() const { return struckBy == nullptr; }
    /// The current version.
    [[nodiscard]] const Entry& current() const { return *counting.front(); }
};

/// The act of an entry: by whom, in which role, when.
[[nodiscard]] Act actOf(const Entry& entry);

/// Entries in the order of seq, wherever they are kept.
using EntrySpan = std::span<const Entry* const>;

/// Where each of some entries is.
[[nodiscard]] std::vector<const Entry*> pointersTo(std::span<const Entry> entries);

/// All facts of some entries, corrected.
class FactBook {
public:
    /// Entries outlive the book.
    explicit FactBook(EntrySpan entries);
    explicit FactBook(std::span<const Entry> entries);

    /// In the order of their first entries.
    [[nodiscard]] const std::vector<Fact>& facts() const { return m_facts; }
    /// Indices of the facts about something, in that order.
    [[nodiscard]] std::span<const std::uint32_t> about(std::string_view id) const;
    [[nodiscard]] const std::vector<Misfit>& misfits() const { return m_misfits; }
    [[nodiscard]] EntrySpan entries() const { return m_entries; }

private:
    void add(const Entry& entry);
    void amend(const Entry& entry);
    void strike(const Entry& entry);
    void misfit(const Entry& entry, MisfitWhy why) { m_misfits.push_back({entry.seq, why}); }
    Fact* factOf(std::int64_t seq);
    void findSubjects();

    std::vector<const Entry*> m_entries;
    std::vector<Fact> m_facts;
    std::unordered_map<std::int64_t, std::uint32_t>
        m_bySeq; ///< versions of the first m_known facts
    std::size_t m_known = 0;
    SubjectFacts m_subjects;
    std::vector<Misfit> m_misfits;
};

} // namespace loadwarden
