#include "core/store/indexes/label_index.h"

#include "core/quantities/person.h"
#include "core/store/queries.h"

#include <array>
#include <set>
#include <utility>
#include <vector>

namespace loadwarden {
namespace {

void insert(WriteTransaction& transaction, const std::string& said, std::string_view item,
            std::string_view cycle, std::int64_t seq)
{
    transaction
        .statement("INSERT INTO p_label (label, item, cycle, said, seq) VALUES (:label, :item, "
                   ":cycle, :said, :seq) ON CONFLICT DO NOTHING")
        .bind(":label", foldedPerson(said))
        .bind(":item", item)
        .bind(":cycle", cycle)
        .bind(":said", said)
        .bind(":seq", seq)
        .run();
}

void takeAdded(WriteTransaction& transaction, std::string_view item, const IndexedEntry& entry,
               const ItemAdded& added)
{
    std::set<std::string, std::less<>> cycles;
    {
        Statement rows = transaction.statement(sqlOf(Query::cyclesOfItem, transaction.dialect()));
        rows.bind(":item", item);
        while (rows.step()) {
            cycles.insert(rows.text(0));
        }
    }
    for (const std::string_view id : entry.header().subjects) {
        if (hasPrefix(id, "ld")) {
            cycles.emplace(id);
        }
    }
    for (const std::string& cycle : cycles) {
        insert(transaction, added.label, item, cycle, entry.seq());
    }
}

void takeMoved(WriteTransaction& transaction, std::string_view item, const ItemMoved& moved,
               std::int64_t seq)
{
    std::vector<std::string> labels;
    {
        Statement rows = transaction.statement(sqlOf(Query::labelsOfItem, transaction.dialect()));
        rows.bind(":item", item);
        while (rows.step()) {
            labels.push_back(rows.text(1));
        }
    }
    for (const std::string& said : labels) {
        insert(transaction, said, item, moved.to, seq);
        insert(transaction, said, item, moved.from, seq);
    }
}

void takeOne(WriteTransaction& transaction, const IndexedEntry& entry)
{
    if (const auto* const imported = entry.act<HistoryImported>()) {
        for (const std::string& label : imported->labels) {
            insert(transaction, label, "", entry.subject("ld"), entry.seq());
        }
        return;
    }
    const std::string_view item = entry.subject("it");
    if (item.empty()) {
        return;
    }
    if (const auto* const added = entry.act<ItemAdded>()) {
        takeAdded(transaction, item, entry, *added);
    } else if (const auto* const moved = entry.act<ItemMoved>()) {
        takeMoved(transaction, item, *moved, entry.seq());
    }
}

} // namespace

std::span<const IndexTable> LabelIndex::tables() const
{
    static constexpr std::array<IndexTable, 1> mine{{{"p_label", "label, item, cycle, said, seq"}}};
    return mine;
}

void LabelIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    for (const IndexedEntry& entry : entries) {
        takeOne(transaction, entry);
    }
}

} // namespace loadwarden
