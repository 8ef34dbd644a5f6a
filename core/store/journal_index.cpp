#include "core/store/journal_index.h"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace loadwarden {
namespace {

struct Row {
    std::int64_t seq = 0;
    std::int64_t ordinal = 0;
    std::string_view subject;
};

/// Rows that one statement inserts at most.
constexpr std::size_t mostTogether = 16;

/// The binds of a row's columns, by rows.
const std::array<std::array<std::string, 3>, mostTogether>& binds()
{
    static const auto all = [] {
        std::array<std::array<std::string, 3>, mostTogether> made;
        for (std::size_t i = 0; i < made.size(); ++i) {
            // Names of one length: none begins with another.
            const std::string number = std::to_string(i + 10);
            made[i] = {":q" + number, ":o" + number, ":s" + number};
        }
        return made;
    }();
    return all;
}

/// Inserts as many rows as that.
std::string insertOf(std::size_t count)
{
    std::string sql = "INSERT INTO p_subject (seq, ordinal, subject) VALUES ";
    for (std::size_t i = 0; i < count; ++i) {
        const auto& [seq, ordinal, subject] = binds()[i];
        sql += (i == 0 ? "(" : ", (") + seq + ", " + ordinal + ", " + subject + ')';
    }
    return sql;
}

void insert(WriteTransaction& transaction, std::span<const Row> rows)
{
    Statement statement = transaction.statement(insertOf(rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const auto& [seq, ordinal, subject] = binds()[i];
        statement.bind(seq.c_str(), rows[i].seq)
            .bind(ordinal.c_str(), rows[i].ordinal)
            .bind(subject.c_str(), rows[i].subject);
    }
    statement.run();
}

} // namespace

std::span<const IndexTable> SubjectIndex::tables() const
{
    static constexpr std::array<IndexTable, 1> tables{{{"p_subject", "seq, ordinal, subject"}}};
    return tables;
}

void SubjectIndex::take(WriteTransaction& transaction, std::span<const TakenEntry> entries)
{
    std::vector<Row> rows;
    for (const TakenEntry& entry : entries) {
        std::int64_t ordinal = 0;
        for (const std::string_view subject : entry.header.subjects) {
            rows.push_back({entry.header.seq, ordinal++, subject});
        }
    }
    for (std::span<const Row> rest(rows); !rest.empty();) {
        const std::size_t count = std::min(mostTogether, rest.size());
        insert(transaction, rest.first(count));
        rest = rest.subspan(count);
    }
}

} // namespace loadwarden
