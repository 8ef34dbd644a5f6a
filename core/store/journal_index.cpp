#include "core/store/journal_index.h"

#include <array>

namespace loadwarden {

std::span<const IndexTable> SubjectIndex::tables() const
{
    static constexpr std::array<IndexTable, 1> tables{{{"p_subject", "seq, ordinal, subject"}}};
    return tables;
}

void SubjectIndex::take(WriteTransaction& transaction, const EntryHeader& header,
                        std::string_view /*bytes*/)
{
    if (header.subjects.empty()) {
        return;
    }
    Statement insert = transaction.statement(
        "INSERT INTO p_subject (seq, ordinal, subject) VALUES (:seq, :ordinal, :subject)");
    insert.bind(":seq", header.seq);
    std::int64_t ordinal = 0;
    for (const std::string_view subject : header.subjects) {
        insert.bind(":ordinal", ordinal++).bind(":subject", subject).run();
    }
}

} // namespace loadwarden
