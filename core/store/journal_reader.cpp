#include "core/store/journal_reader.h"

#include "core/store/queries.h"

#include <algorithm>
#include <utility>

namespace loadwarden {
namespace {

constexpr std::int64_t blockSize = 256;

StoredEntry entryOf(const Statement& row)
{
    StoredEntry entry;
    entry.seq = row.integer(0);
    const auto hash = parseHash(row.text(1));
    if (!hash) {
        throw engineError(StoreFault::damaged,
                          "entry " + std::to_string(entry.seq) + " has no hash");
    }
    entry.hash = *hash;
    entry.bytes = row.bytes(2);
    return entry;
}

} // namespace

EntryCursor::EntryCursor(ReadSnapshot& snapshot, std::string subject, std::int64_t first,
                         std::int64_t last)
    : m_snapshot(&snapshot), m_subject(std::move(subject)), m_next(first), m_last(last)
{
}

void EntryCursor::fetch()
{
    m_block.clear();
    m_taken = 0;
    const bool all = m_subject.empty();
    Statement rows = m_snapshot->statement(
        sqlOf(all ? Query::entriesInRange : Query::entriesAbout, m_snapshot->dialect()));
    if (!all) {
        rows.bind(":subject", m_subject);
    }
    rows.bind(":first", m_next).bind(":last", m_last).bind(":limit", blockSize);
    while (rows.step()) {
        m_block.push_back(entryOf(rows));
    }
    m_end = static_cast<std::int64_t>(m_block.size()) < blockSize;
    if (!m_block.empty()) {
        m_next = m_block.back().seq + 1;
    }
}

std::optional<StoredEntry> EntryCursor::next()
{
    if (m_taken == m_block.size() && !m_end) {
        fetch();
    }
    if (m_taken == m_block.size()) {
        return std::nullopt;
    }
    return std::move(m_block[m_taken++]);
}

Head JournalReader::head()
{
    Statement row = m_snapshot.statement("SELECT seq, hash FROM p_head WHERE one = 1");
    if (!row.step()) {
        return {};
    }
    const auto hash = parseHash(row.text(1));
    if (!hash) {
        throw engineError(StoreFault::damaged, "p_head has no hash");
    }
    return {row.integer(0), *hash};
}

std::vector<StoredEntry> JournalReader::ofRegister(std::string_view prefix, std::string_view from)
{
    Statement rows = m_snapshot.statement(sqlOf(Query::wholeOwnEntriesOfAll, m_snapshot.dialect()));
    // '.' follows '-' among the bytes.
    rows.bind(":from", std::string(prefix) + '-' + std::string(from))
        .bind(":end", std::string(prefix) + '.')
        .bind(":seq", toTheEnd);
    std::vector<StoredEntry> entries;
    while (rows.step()) {
        if (rows.isNull(1)) {
            throw engineError(StoreFault::damaged, "p_own names entry "
                                                       + std::to_string(rows.integer(0))
                                                       + ", which is not there");
        }
        entries.push_back(entryOf(rows));
    }
    // Some are about several things of a register.
    std::ranges::sort(entries, {}, &StoredEntry::seq);
    const auto doubled = std::ranges::unique(entries, {}, &StoredEntry::seq);
    entries.erase(doubled.begin(), doubled.end());
    return entries;
}

std::optional<StoredEntry> JournalReader::entry(std::int64_t seq)
{
    return range(seq, seq).next();
}

EntryCursor JournalReader::range(std::int64_t first, std::int64_t last)
{
    return {m_snapshot, "", first, last};
}

EntryCursor JournalReader::about(std::string subject, std::int64_t first, std::int64_t last)
{
    return {m_snapshot, std::move(subject), first, last};
}

} // namespace loadwarden
