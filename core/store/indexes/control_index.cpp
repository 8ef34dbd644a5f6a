#include "core/store/indexes/control_index.h"

#include "core/store/queries.h"

#include <array>
#include <set>

namespace loadwarden {
namespace {

/// What is known of a control: what it is for, and its times.
struct Known {
    std::set<std::string> reasons; ///< pl- and ld-; empty text: nothing said yet
    std::set<std::int64_t> times;  ///< ms
};

Known knownOf(WriteTransaction& transaction, std::string_view control)
{
    Statement rows = transaction.statement(sqlOf(Query::controlSaid, transaction.dialect()));
    rows.bind(":control", control);
    Known known;
    while (rows.step()) {
        known.reasons.insert(rows.text(0));
        known.times.insert(rows.integer(1));
    }
    return known;
}

void takeControl(WriteTransaction& transaction, std::string_view control, const IndexedEntry& entry)
{
    const auto* const prepared = entry.act<ControlPrepared>();
    const auto* const incubated = entry.act<BiologicalIncubated>();
    if (prepared == nullptr && incubated == nullptr) {
        return;
    }
    Known known = knownOf(transaction, control);
    known.times.insert(entry.entry()->happenedAt.at.ms);
    if (prepared != nullptr && !prepared->lot.empty()) {
        known.reasons.insert(prepared->lot);
    }
    if (prepared != nullptr && !prepared->forLoad.empty()) {
        known.reasons.insert(prepared->forLoad);
    }
    if (known.reasons.empty()) {
        known.reasons.emplace();
    }
    for (const std::string& reason : known.reasons) {
        for (const std::int64_t at : known.times) {
            transaction
                .statement("INSERT INTO p_control (reason, at, control, seq) VALUES (:reason, :at, "
                           ":control, :seq) ON CONFLICT DO NOTHING")
                .bind(":reason", reason)
                .bind(":at", at)
                .bind(":control", control)
                .bind(":seq", entry.seq())
                .run();
        }
    }
}

void takeOne(WriteTransaction& transaction, const IndexedEntry& entry)
{
    if (const std::string_view control = entry.subject("bc"); !control.empty()) {
        takeControl(transaction, control, entry);
    }
    if (const auto* const lot = entry.act<ProductLotRecorded>()) {
        transaction
            .statement("INSERT INTO p_lot_number (number, lot, seq) VALUES (:number, :lot, :seq) "
                       "ON CONFLICT DO NOTHING")
            .bind(":number", lot->number)
            .bind(":lot", entry.subject("pl"))
            .bind(":seq", entry.seq())
            .run();
    }
}

} // namespace

std::span<const IndexTable> ControlIndex::tables() const
{
    static constexpr std::array<IndexTable, 2> mine{
        {{"p_control", "reason, at, control, seq"}, {"p_lot_number", "number, lot, seq"}}};
    return mine;
}

void ControlIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    for (const IndexedEntry& entry : entries) {
        takeOne(transaction, entry);
    }
}

} // namespace loadwarden
