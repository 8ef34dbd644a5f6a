#include "core/desk/journal_entries.h"

#include "core/store/store_error.h"

namespace loadwarden {

Entry understand(const StoredEntry& stored)
{
    const auto envelope = readEnvelope(stored.bytes);
    if (const auto* const fault = std::get_if<EnvelopeFault>(&envelope)) {
        throw engineError(StoreFault::damaged,
                          "entry " + std::to_string(stored.seq) + ": " + fault->what);
    }
    auto entry = readEntry(std::get<Envelope>(envelope), stored.hash);
    if (const auto* const fault = std::get_if<ActFault>(&entry)) {
        throw engineError(StoreFault::damaged,
                          "entry " + std::to_string(stored.seq) + ": " + fault->what);
    }
    return std::get<Entry>(std::move(entry));
}

std::vector<Entry> entriesAbout(ReadSnapshot& snapshot, const std::string& subject)
{
    std::vector<Entry> entries;
    JournalReader reader(snapshot);
    EntryCursor cursor = reader.about(subject);
    while (const auto stored = cursor.next()) {
        entries.push_back(understand(*stored));
    }
    return entries;
}

bool isMentioned(ReadSnapshot& snapshot, const std::string& subject)
{
    Statement row =
        snapshot.statement("SELECT seq FROM p_subject WHERE subject = :subject LIMIT 1");
    row.bind(":subject", subject);
    return row.step();
}

std::vector<Entry> registerEntries(ReadSnapshot& snapshot, std::string_view prefix)
{
    // '.' follows '-' among the bytes; an id is of ASCII alone.
    std::vector<std::int64_t> seqs;
    {
        Statement rows = snapshot.statement(
            "SELECT seq FROM p_subject WHERE subject >= :from AND subject < :to AND ordinal = 0 "
            "ORDER BY seq");
        rows.bind(":from", std::string(prefix) + '-').bind(":to", std::string(prefix) + '.');
        while (rows.step()) {
            seqs.push_back(rows.integer(0));
        }
    }
    std::vector<Entry> entries;
    JournalReader reader(snapshot);
    for (const std::int64_t seq : seqs) {
        const auto stored = reader.entry(seq);
        if (!stored) {
            throw engineError(StoreFault::damaged, "p_subject names entry " + std::to_string(seq)
                                                       + ", which is not there");
        }
        entries.push_back(understand(*stored));
    }
    return entries;
}

} // namespace loadwarden
