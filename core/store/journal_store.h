#pragma once

#include "core/quantities/clock.h"
#include "core/quantities/zone.h"
#include "core/store/head_witness.h"
#include "core/store/indexes/act_indexes.h"
#include "core/store/journal_identity.h"
#include "core/store/journal_index.h"
#include "core/store/stored_entry.h"
#include "core/store/write_transaction.h"

#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace loadwarden {

/// How much earlier than the newest entry a clock may be before that is worth saying: clocks are
/// put right by fractions of a second all the time.
inline constexpr Duration clockTolerance = Duration::seconds(2);

/// What was recorded.
struct Appended {
    std::int64_t firstSeq = 0;
    Head head; ///< the last entry of these
    JournalTime recordedAt;
    /// By how much the clock is behind the entry before, when by more than clockTolerance: it was
    /// set back, or it goes wrong. The entries are recorded with the time that it shows.
    std::optional<Duration> clockBehind;
};

/// Nothing was recorded: these entries about what should be unchanged have come in since, oldest
/// first.
struct StaleSight {
    std::vector<StoredEntry> since;
};

/// Appends to the journal and keeps the tables beside it. All of what one call records is recorded
/// together or not at all, with one sync, and when the call returns it is on the disk.
class JournalStore {
public:
    /// The connection's schema is up to date (migrate()). `zone` is the workstation's. `further`
    /// are index tables beside p_subject and those of ActIndexes; `witness` is told what was
    /// recorded. Whatever is referred to outlives the store.
    JournalStore(Connection& connection, const Clock& clock, Zone zone,
                 std::vector<JournalIndex*> further = {}, HeadWitness* witness = nullptr);

    /// Writes entry 1 of a new journal. Throws StoreFault::exists when there is an entry.
    Appended begin(const JournalIdentity& identity, const std::string& workstation);

    /// Appends in a transaction of its own. Throws StoreFault::headChanged, with nothing recorded,
    /// when the newest entry is not what p_head, its own bytes, or this store's memory say;
    /// StoreFault::misuse for a draft that would not be an entry (core/journal/FORMAT.md);
    /// StoreFault::older when the index tables must be filled anew first (rebuildIndexes()).
    std::variant<Appended, StaleSight> append(std::span<const EntryDraft> drafts);

    /// The same inside a transaction that its owner commits and then confirms, or, after
    /// StaleSight, does not commit.
    std::variant<Appended, StaleSight> append(WriteTransaction& transaction,
                                              std::span<const EntryDraft> drafts);
    void confirm(const Appended& appended);

    /// The newest entry as everything in the database agrees upon it; throws as append() does.
    [[nodiscard]] Head checkedHead(WriteTransaction& transaction);

    /// The newest entry that this store is sure of; {} at first.
    [[nodiscard]] const Head& lastKnown() const { return m_known; }

private:
    struct Newest;

    [[nodiscard]] Newest newest(WriteTransaction& transaction);
    void checkKnown(WriteTransaction& transaction, const Newest& newest);
    [[nodiscard]] StaleSight changesSince(WriteTransaction& transaction,
                                          std::span<const EntryDraft> drafts);
    Appended write(WriteTransaction& transaction, std::span<const EntryDraft> drafts,
                   const Newest& newest);
    Head writeOne(WriteTransaction& transaction, const Envelope& envelope);

    Connection& m_connection;
    const Clock& m_clock;
    Zone m_zone;
    SubjectIndex m_subjects;
    ActIndexes m_acts;
    std::vector<JournalIndex*> m_further;
    HeadWitness* m_witness;
    Head m_known;
};

} // namespace loadwarden
