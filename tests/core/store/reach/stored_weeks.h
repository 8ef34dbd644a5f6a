#pragma once

#include "core/store/act_entry.h"
#include "core/store/journal_reader.h"
#include "core/store/reach/reach_reader.h"
#include "core/store/rebuild.h"
#include "tests/core/store/bulk_writer.h"
#include "tests/core/store/reach/weeks.h"
#include "tests/core/store/store_support.h"

#include <string>
#include <vector>

namespace loadwarden::testing {

/// Writes a journal's entries but the first, which opens it.
inline void write(BulkWriter& writer, std::span<const Entry> entries)
{
    for (const Entry& entry : entries) {
        if (entry.seq > 1) {
            writer.add(draftOf(entry));
        }
    }
    writer.flush();
}

/// All entries of a journal, with their acts.
inline std::vector<Entry> wholeJournal(Connection& connection)
{
    ReadSnapshot snapshot(connection);
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.range(1);
    std::vector<Entry> entries;
    while (const auto entry = cursor.next()) {
        entries.push_back(understand(entry->bytes, entry->hash));
    }
    return entries;
}

inline std::vector<std::int64_t> seqsOf(const std::vector<Entry>& entries)
{
    std::vector<std::int64_t> seqs;
    for (const Entry& entry : entries) {
        seqs.push_back(entry.seq);
    }
    return seqs;
}

/// The entries in reach of one cycle, to be kept.
inline std::vector<Entry> entriesFor(ReachReader& reader, const std::string& cycle)
{
    std::vector<Entry> entries;
    for (const Entry* const each : reader.entriesFor(cycle)) {
        entries.push_back(*each);
    }
    return entries;
}

inline std::vector<Entry> entriesFor(Connection& connection, const std::string& cycle,
                                     std::int64_t upTo = toTheEnd)
{
    ReadSnapshot snapshot(connection);
    EntryCache cache;
    ReachReader reader(snapshot, cache, upTo);
    return entriesFor(reader, cycle);
}

} // namespace loadwarden::testing
