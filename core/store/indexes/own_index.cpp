#include "core/store/indexes/own_index.h"

#include <algorithm>
#include <array>

namespace loadwarden {
namespace {

constexpr std::array<std::string_view, 12> registers{"fa", "po", "sz", "sp", "pr", "pl",
                                                     "pk", "dv", "in", "st", "qu", "rc"};

/// Whether an entry is about what has that prefix, by the list of acts: the first of what its kind
/// must have among its subjects is the most particular.
bool isOwn(std::string_view prefix, const IndexedEntry& entry)
{
    if (!entry.isUnderstood()) {
        return true;
    }
    const std::string_view asked = findKind(entry.header().kind)->subjects;
    return asked.empty() || asked.starts_with(prefix) || asked.starts_with("ic");
}

void takeOne(WriteTransaction& transaction, const IndexedEntry& entry)
{
    for (const std::string_view id : entry.header().subjects) {
        const auto prefix = std::ranges::find_if(
            registers, [id](std::string_view each) { return hasPrefix(id, each); });
        if (prefix != registers.end() && isOwn(*prefix, entry)) {
            transaction.statement("INSERT INTO p_own (subject, seq) VALUES (:subject, :seq)")
                .bind(":subject", id)
                .bind(":seq", entry.seq())
                .run();
        }
    }
}

} // namespace

std::span<const IndexTable> OwnIndex::tables() const
{
    static constexpr std::array<IndexTable, 1> mine{{{"p_own", "subject, seq"}}};
    return mine;
}

void OwnIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    for (const IndexedEntry& entry : entries) {
        takeOne(transaction, entry);
    }
}

} // namespace loadwarden
