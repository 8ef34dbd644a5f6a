#pragma once

#include "core/store/journal_reader.h"
#include "core/store/journal_store.h"
#include "core/store/migration.h"

#include <memory>
#include <string>
#include <vector>

namespace loadwarden::testing {

inline constexpr Instant testTime{1'930'000'000'000};

/// "note" about these subjects.
inline EntryDraft noteAbout(std::vector<std::string> subjects, const std::string& text = "")
{
    EntryDraft draft;
    draft.happenedAt = {testTime, 60};
    draft.actor = "st-1";
    draft.role = "technician";
    draft.workstation = "ws-1";
    draft.kind = "note";
    draft.subjects = std::move(subjects);
    draft.body = "{\"text\":\"" + text + "\"}";
    return draft;
}

/// A journal with its connection and a clock that stands still.
struct TestJournal {
    std::unique_ptr<Connection> connection;
    std::unique_ptr<FixedClock> clock = std::make_unique<FixedClock>(testTime);
    std::unique_ptr<JournalStore> store;

    explicit TestJournal(const StorePlace& place, const ConnectionOptions& options = {},
                         std::vector<JournalIndex*> further = {})
        : connection(std::make_unique<Connection>(place, options))
    {
        migrate(*connection, migrations(), *clock);
        store = std::make_unique<JournalStore>(
            *connection, *clock, Zone::find("Europe/Oslo").value(), std::move(further));
    }

    /// A new one with entry 1; its id is jn-1.
    static TestJournal make(const StorePlace& place, Syncing syncing = Syncing::full)
    {
        TestJournal journal(place, {.access = Access::create, .syncing = syncing});
        journal.store->begin({"jn-1", "Facility", "Europe/Oslo"}, "ws-1");
        return journal;
    }

    /// Throws std::bad_variant_access when the sight is stale.
    Appended append(const EntryDraft& draft)
    {
        return std::get<Appended>(store->append(std::span(&draft, 1)));
    }
};

inline std::vector<StoredEntry> all(EntryCursor cursor)
{
    std::vector<StoredEntry> entries;
    while (auto entry = cursor.next()) {
        entries.push_back(*std::move(entry));
    }
    return entries;
}

inline std::vector<std::int64_t> seqsOf(const std::vector<StoredEntry>& entries)
{
    std::vector<std::int64_t> seqs;
    for (const StoredEntry& entry : entries) {
        seqs.push_back(entry.seq);
    }
    return seqs;
}

/// Does what the program never does.
inline void tamper(Connection& connection, const std::vector<std::string>& statements)
{
    WriteTransaction transaction(connection);
    for (const std::string& sql : statements) {
        transaction.define(sql);
    }
    transaction.commit();
}

/// Takes away the triggers that let a table only grow.
inline void dropGuards(Connection& connection, const std::string& table)
{
    if (connection.dialect().engine() == Dialect::Engine::sqlite) {
        tamper(connection,
               {"DROP TRIGGER " + table + "_no_update", "DROP TRIGGER " + table + "_no_delete"});
    } else {
        tamper(connection, {"DROP TRIGGER " + table + "_no_change ON " + table});
    }
}

} // namespace loadwarden::testing
