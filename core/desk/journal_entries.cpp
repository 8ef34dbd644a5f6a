#include "core/desk/journal_entries.h"

#include "core/store/act_entry.h"
#include "core/store/queries.h"

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

std::vector<Entry> registerEntries(ReadSnapshot& snapshot, std::string_view prefix,
                                   std::string_view from)
{
    std::vector<Entry> entries;
    for (const StoredEntry& stored : JournalReader(snapshot).ofRegister(prefix, from)) {
        entries.push_back(understand(stored.bytes, stored.hash));
    }
    return entries;
}

} // namespace loadwarden
