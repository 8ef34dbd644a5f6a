#pragma once

#include "core/store/journal_store.h"
#include "core/store/migration.h"

#include <memory>
#include <optional>
#include <span>
#include <vector>

namespace loadwarden::testing {

/// An entry as it is to be recorded, and when.
struct TimedDraft {
    EntryDraft draft;
    Instant recordedAt{};
};

/// Fills a journal with all its indexes: what it writes is what the program would have written act
/// by act, but many acts go into one transaction.
class BulkWriter {
public:
    /// A new journal; its entry 1 is as of `openedAt`.
    BulkWriter(const StorePlace& place, Instant openedAt, std::size_t actsATransaction,
               Syncing syncing = Syncing::off)
        : m_connection(place, {.access = Access::create, .syncing = syncing}),
          m_clock(openedAt),
          m_most(actsATransaction)
    {
        migrate(m_connection, migrations(), m_clock);
        m_store.emplace(m_connection, m_clock, *Zone::find("UTC"));
        m_store->begin({"jn-1", "F", "UTC"}, "ws-1");
    }

    /// Throws std::bad_variant_access when the sight is stale.
    void add(const TimedDraft& timed) { add(std::span(&timed.draft, 1), timed.recordedAt); }

    /// Some that are recorded together.
    void add(std::span<const EntryDraft> drafts, Instant recordedAt)
    {
        if (!m_transaction) {
            m_transaction.emplace(m_connection);
        }
        m_clock.set(recordedAt);
        m_last = std::get<Appended>(m_store->append(*m_transaction, drafts));
        m_open += drafts.size();
        if (m_open >= m_most) {
            flush();
        }
    }

    /// Commits what is open.
    void flush()
    {
        if (m_transaction) {
            m_transaction->commit();
            m_transaction.reset();
            m_store->confirm(m_last);
        }
        m_open = 0;
    }

    [[nodiscard]] Connection& connection() { return m_connection; }
    [[nodiscard]] std::int64_t newest() const { return m_last.head.seq; }

private:
    Connection m_connection;
    FixedClock m_clock;
    std::size_t m_most;
    std::optional<JournalStore> m_store;
    std::optional<WriteTransaction> m_transaction;
    std::size_t m_open = 0;
    Appended m_last;
};

/// The draft of an entry that was made elsewhere: for a journal in which it gets the same seq.
inline TimedDraft draftOf(const Entry& entry)
{
    const Envelope envelope = envelopeOf(entry);
    EntryDraft draft;
    draft.happenedAt = envelope.happenedAt;
    draft.happenedFrom = envelope.happenedFrom;
    draft.actor = envelope.actor;
    draft.role = envelope.role;
    draft.workstation = envelope.workstation;
    draft.kind = envelope.kind;
    draft.version = envelope.version;
    draft.subjects = envelope.subjects;
    draft.reason = envelope.reason;
    draft.supersedes = envelope.supersedes;
    draft.basedOn = envelope.basedOn;
    draft.body = envelope.body;
    return {std::move(draft), envelope.recordedAt.at};
}

} // namespace loadwarden::testing
