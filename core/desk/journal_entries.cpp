#include "core/desk/journal_entries.h"

#include "core/store/act_entry.h"
#include "core/store/queries.h"
#include "core/store/store_error.h"

#include <algorithm>

namespace loadwarden {

std::vector<Entry> entriesAbout(ReadSnapshot& snapshot, const std::string& subject)
{
    std::vector<Entry> entries;
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.about(subject);
    while (const auto stored = cursor.next()) {
        entries.push_back(understand(stored->bytes, stored->hash));
    }
    return entries;
}

bool isMentioned(ReadSnapshot& snapshot, const std::string& subject)
{
    Statement row = snapshot.statement(sqlOf(Query::seqsAbout, snapshot.dialect()));
    row.bind(":subject", subject).bind(":seq", toTheEnd);
    return row.step();
}

std::vector<Entry> registerEntries(ReadSnapshot& snapshot, std::string_view prefix)
{
    std::vector<std::int64_t> seqs;
    {
        // '.' follows '-' among the bytes.
        Statement rows = snapshot.statement(sqlOf(Query::ownEntriesOfAll, snapshot.dialect()));
        rows.bind(":from", std::string(prefix) + '-')
            .bind(":end", std::string(prefix) + '.')
            .bind(":seq", toTheEnd);
        while (rows.step()) {
            seqs.push_back(rows.integer(0));
        }
    }
    std::ranges::sort(seqs);
    const auto doubled = std::ranges::unique(seqs);
    seqs.erase(doubled.begin(), doubled.end());
    std::vector<Entry> entries;
    JournalReader reader(snapshot);
    for (const std::int64_t seq : seqs) {
        const auto stored = reader.entry(seq);
        if (!stored) {
            throw engineError(StoreFault::damaged,
                              "p_own names entry " + std::to_string(seq) + ", which is not there");
        }
        entries.push_back(understand(stored->bytes, stored->hash));
    }
    return entries;
}

} // namespace loadwarden
