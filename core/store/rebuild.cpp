#include "core/store/rebuild.h"

#include "core/store/indexes/act_indexes.h"
#include "core/store/write_transaction.h"

#include <array>
#include <optional>

namespace loadwarden {
namespace {

constexpr std::int64_t blockSize = 1000;
constexpr std::size_t mostKept = 100;
constexpr IndexTable headTable{"p_head", "one, seq, hash"};

std::string asText(std::string_view columns)
{
    // "a, b" becomes a text of both, so that rows of every table are read alike.
    std::string expression = "CAST(";
    for (const char c : columns) {
        expression += c == ',' ? std::string(" AS TEXT) || ' ' || CAST(") : std::string(1, c);
    }
    return expression + " AS TEXT)";
}

std::string before(const IndexTable& table)
{
    return "c_before_" + std::string(table.name);
}

void setAside(WriteTransaction& transaction, const IndexTable& table)
{
    const std::string name(table.name);
    transaction.define("CREATE TABLE " + before(table) + " AS SELECT " + std::string(table.columns)
                       + " FROM " + name);
    transaction.define("DELETE FROM " + name);
}

std::int64_t numberOf(WriteTransaction& transaction, const std::string& select)
{
    Statement row = transaction.statement(select);
    return row.step() ? row.integer(0) : 0;
}

/// Whether a table has the rows that were set aside and no others. Every one of them is looked for
/// by the table's key; as no row is there twice, as many are then the same.
bool isAsBefore(WriteTransaction& transaction, const IndexTable& table)
{
    std::string same;
    std::string_view rest = table.columns;
    while (!rest.empty()) {
        const std::size_t comma = rest.find(", ");
        const std::string column(rest.substr(0, comma));
        rest = comma == std::string_view::npos ? "" : rest.substr(comma + 2);
        same += (same.empty() ? "n." : " AND n.") + column + " = b." + column;
    }
    const std::string name(table.name);
    return numberOf(transaction, "SELECT count(*) FROM " + name)
               == numberOf(transaction, "SELECT count(*) FROM " + before(table))
           && numberOf(transaction, "SELECT count(*) FROM " + before(table)
                                        + " b WHERE NOT EXISTS (SELECT 1 FROM " + name + " n WHERE "
                                        + same + ")")
                  == 0;
}

void collect(WriteTransaction& transaction, const IndexTable& table, bool missing,
             RebuildReport& report)
{
    const std::string now = "SELECT " + std::string(table.columns) + " FROM ";
    const std::string a = now + (missing ? std::string(table.name) : before(table));
    const std::string b = now + (missing ? before(table) : std::string(table.name));
    Statement rows = transaction.statement("SELECT " + asText(table.columns) + " FROM (" + a
                                           + " EXCEPT " + b + ") differing");
    std::size_t kept = 0;
    while (rows.step()) {
        ++report.differenceCount;
        if (kept < mostKept) {
            ++kept;
            report.differences.push_back({std::string(table.name), rows.text(0), missing});
        }
    }
}

struct Entry {
    std::int64_t seq = 0;
    std::string hash;
    std::string bytes;
};

std::vector<Entry> entriesAfter(WriteTransaction& transaction, std::int64_t after)
{
    Statement rows =
        transaction.statement("SELECT seq, hash, " + transaction.dialect().bytesOf("bytes")
                              + " FROM j_entry WHERE seq > :after ORDER BY seq LIMIT :limit");
    rows.bind(":after", after).bind(":limit", blockSize);
    std::vector<Entry> block;
    while (rows.step()) {
        block.push_back({rows.integer(0), rows.text(1), rows.bytes(2)});
    }
    return block;
}

std::int64_t greatestSeq(WriteTransaction& transaction)
{
    Statement row = transaction.statement("SELECT MAX(seq) FROM j_entry");
    return row.step() && !row.isNull(0) ? row.integer(0) : 0;
}

/// False when it was cancelled.
bool refill(WriteTransaction& transaction, const std::vector<JournalIndex*>& indexes,
            Progress& progress, RebuildReport& report)
{
    const std::int64_t total = greatestSeq(transaction);
    Entry last;
    std::vector<EntryHeader> headers(blockSize);
    for (auto block = entriesAfter(transaction, 0); !block.empty();
         block = entriesAfter(transaction, last.seq)) {
        std::vector<TakenEntry> taken;
        taken.reserve(block.size());
        for (const Entry& entry : block) {
            EntryHeader& header = headers[taken.size()];
            if (!readHeader(entry.bytes, header) || header.seq != entry.seq) {
                throw engineError(StoreFault::damaged, "entry " + std::to_string(entry.seq)
                                                           + " cannot be read as an entry");
            }
            taken.push_back({header, entry.bytes});
        }
        for (JournalIndex* const index : indexes) {
            index->take(transaction, taken);
        }
        report.entries += static_cast<std::int64_t>(block.size());
        last = std::move(block.back());
        if (!progress.goOn(report.entries, total)) {
            return false;
        }
    }
    if (last.seq != 0) {
        transaction.statement("INSERT INTO p_head (one, seq, hash) VALUES (1, :seq, :hash)")
            .bind(":seq", last.seq)
            .bind(":hash", last.hash)
            .run();
    }
    return true;
}

} // namespace

RebuildReport rebuildIndexes(Connection& connection, const std::vector<JournalIndex*>& further,
                             Rebuild mode, Progress& progress)
{
    SubjectIndex subjects;
    ActIndexes acts;
    std::vector<JournalIndex*> indexes{&subjects, &acts};
    indexes.insert(indexes.end(), further.begin(), further.end());
    std::vector<IndexTable> tables{headTable};
    for (const JournalIndex* const index : indexes) {
        tables.insert(tables.end(), index->tables().begin(), index->tables().end());
    }

    RebuildReport report;
    WriteTransaction transaction(connection);
    for (const IndexTable& table : tables) {
        setAside(transaction, table);
    }
    if (!refill(transaction, indexes, progress, report)) {
        report.cancelled = true;
        return report;
    }
    for (const IndexTable& table : tables) {
        if (!isAsBefore(transaction, table)) {
            collect(transaction, table, true, report);
            collect(transaction, table, false, report);
        }
        transaction.define("DROP TABLE " + before(table));
    }
    if (mode == Rebuild::replace) {
        transaction
            .statement("INSERT INTO s_index_rules (one, rules) VALUES (1, :rules) "
                       "ON CONFLICT (one) DO UPDATE SET rules = excluded.rules")
            .bind(":rules", indexRules)
            .run();
        transaction.commit();
    }
    return report;
}

} // namespace loadwarden
