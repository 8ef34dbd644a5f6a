#pragma once

#include "core/desk/pin_hash.h"
#include "core/desk/refusal.h"
#include "core/desk/to_record.h"
#include "core/quantities/clock.h"
#include "core/quantities/id_source.h"
#include "core/store/desktop_lock.h"
#include "core/store/head_witness.h"
#include "core/store/journal_identity.h"
#include "core/store/journal_store.h"
#include "core/store/reach/entry_cache.h"
#include "core/store/read_snapshot.h"

#include <filesystem>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace loadwarden {

/// The computer at which somebody works.
struct Workplace {
    const Clock& clock;
    IdSource& ids;
    std::string workstation;    ///< its id in every entry, a word
    std::filesystem::path keep; ///< folder of this user for what stands outside the journal: the
                                ///< newest entry seen, the key, seals
    Syncing syncing = Syncing::full;
    PinCost pinCost{};
};

/// What is recorded together, by whom, and what else is written with it.
struct Plan {
    Author author;
    std::vector<ToRecord> acts;
    /// Called in the transaction before the acts are written and may complete them: what is slow
    /// has no place in it.
    std::function<void(WriteTransaction&, std::vector<ToRecord>&)> inside;
};

/// Whether a journal is believed to be the one that this computer knows, before it is opened.
enum class Trust : std::uint8_t {
    checked,
    none ///< to verify it: whatever is wrong with it is for the verification to say
};

/// A journal's file that is open for work, at one computer. Belongs to the thread that made it.
class Office {
public:
    /// Opens a journal: takes the desktop's lock if it is to write, brings the schema up to date,
    /// and looks whether the newest entry that this computer has seen is there. Throws StoreError.
    Office(const std::filesystem::path& file, Access access, const Workplace& place,
           Trust trust = Trust::checked);
    ~Office();
    Office(const Office&) = delete;
    Office& operator=(const Office&) = delete;

    /// Makes a new journal with entry 1 and closes it again. Throws StoreError; what there is at
    /// that place is never touched.
    static void found(const std::filesystem::path& file, const JournalIdentity& identity,
                      const Workplace& place);

    [[nodiscard]] const std::filesystem::path& file() const { return m_file; }
    [[nodiscard]] const Workplace& place() const { return m_place; }
    [[nodiscard]] const JournalIdentity& identity() const { return m_identity; }
    /// Of the facility, as recorded when it was opened.
    [[nodiscard]] const Zone& zone() const { return m_zone; }
    [[nodiscard]] Instant now() const { return m_place.clock.now(); }
    [[nodiscard]] Connection& connection() { return *m_connection; }
    [[nodiscard]] JournalStore& store() { return *m_store; }
    /// Entries of this journal that were read lately.
    [[nodiscard]] EntryCache& entries() { return m_entries; }
    /// Somebody else's desktop that ended without closing this file, in words.
    [[nodiscard]] std::optional<std::string> staleLock() const;

    /// The newest entry that this computer has seen of this journal; nullopt: none.
    [[nodiscard]] std::optional<Head> seenHere() const;

    /// Why acts cannot be entries at all, whatever stands in the journal; nullopt where they can.
    [[nodiscard]] std::optional<Refusal> whyNoEntries(std::span<const ToRecord> acts,
                                                      const Author& author);

    /// Records what `plan` makes of the journal as it stands: it is called with a snapshot of the
    /// newest entries, and again where somebody has recorded something meanwhile, so that what it
    /// looked at is what the acts follow upon. Throws StoreError.
    OrRefusal<Appended> record(const std::function<OrRefusal<Plan>(ReadSnapshot&)>& plan);

private:
    [[nodiscard]] OrRefusal<EntryDraft> draftOf(const ToRecord& act, const Author& author,
                                                std::int64_t seq) const;

    std::filesystem::path m_file;
    Workplace m_place;
    std::unique_ptr<DesktopLock> m_lock;
    std::unique_ptr<Connection> m_connection;
    JournalIdentity m_identity;
    Zone m_zone;
    EntryCache m_entries;
    std::unique_ptr<HeadWitness> m_witness;
    std::unique_ptr<JournalStore> m_store;
};

} // namespace loadwarden
