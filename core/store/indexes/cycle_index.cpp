#include "core/store/indexes/cycle_index.h"

#include "core/cycle/cycle_words.h"
#include "core/store/imported_lot.h"
#include "core/store/indexes/cycle_marks.h"

#include <array>

namespace loadwarden {
namespace {

void change(WriteTransaction& transaction, std::string_view cycle, const std::string& what)
{
    transaction.statement("UPDATE p_cycle SET " + what + " WHERE cycle = :cycle")
        .bind(":cycle", cycle)
        .run();
}

void insertLot(WriteTransaction& transaction, std::string_view cycle, std::string_view lot,
               std::int64_t seq)
{
    transaction
        .statement("INSERT INTO p_cycle_lot (lot, cycle, seq) VALUES (:lot, :cycle, :seq) "
                   "ON CONFLICT DO NOTHING")
        .bind(":lot", lot)
        .bind(":cycle", cycle)
        .bind(":seq", seq)
        .run();
}

void takeReserved(WriteTransaction& transaction, std::string_view cycle, const IndexedEntry& entry,
                  const CycleReserved& reserved)
{
    transaction
        .statement("UPDATE p_cycle SET sterilizer = :sterilizer, lot = :lot, purpose = :purpose "
                   "WHERE cycle = :cycle")
        .bind(":sterilizer", entry.subject("sz"))
        .bind(":lot", reserved.lot)
        .bind(":purpose", wordOf(purposeWords, reserved.purpose))
        .bind(":cycle", cycle)
        .run();
    insertLot(transaction, cycle, reserved.lot, entry.seq());
}

void takeImported(WriteTransaction& transaction, std::string_view cycle, const IndexedEntry& entry,
                  const HistoryImported& imported)
{
    transaction
        .statement("UPDATE p_cycle SET sterilizer = :sterilizer, lot = :lot, purpose = :purpose, "
                   "at = :at WHERE cycle = :cycle")
        .bind(":sterilizer", std::string(entry.subject("sz")))
        .bind(":lot", imported.lot)
        .bind(":purpose", importedPurpose)
        .bind(":at", entry.entry()->happenedAt.at.ms)
        .bind(":cycle", cycle)
        .run();
    insertLot(transaction, cycle, capitalLot(imported.lot), entry.seq());
}

void takeTimes(WriteTransaction& transaction, std::string_view cycle, const SaidOfCycle& said)
{
    for (const SaidTime& each : said.times) {
        if (each.mark == mark::start || each.mark == mark::counter) {
            transaction
                .statement(each.mark == mark::start
                               ? "UPDATE p_cycle SET at = :value WHERE cycle = :cycle"
                               : "UPDATE p_cycle SET counter = :value WHERE cycle = :cycle")
                .bind(":value", each.at)
                .bind(":cycle", cycle)
                .run();
        }
    }
}

void takeOf(WriteTransaction& transaction, std::string_view cycle, const IndexedEntry& entry,
            const SaidOfCycle& said)
{
    const bool vials = entry.has("bv");
    // Nothing is open about a load of the time before.
    const auto* const imported = entry.act<HistoryImported>();
    const bool ended = entry.act<CycleEnded>() != nullptr || imported != nullptr;
    const bool disposed = entry.act<DispositionSigned>() != nullptr || imported != nullptr;
    transaction
        .statement("INSERT INTO p_cycle (cycle, sterilizer, lot, purpose, at, counter, vials, "
                   "trouble, ended, disposed, newest) VALUES (:cycle, '', '', '', :at, -1, :vials, "
                   ":trouble, :ended, :disposed, :seq) ON CONFLICT (cycle) DO UPDATE SET "
                   "newest = excluded.newest")
        .bind(":cycle", cycle)
        .bind(":at", entry.recordedMs())
        .bind(":vials", std::int64_t{vials})
        .bind(":trouble", std::int64_t{said.isTrouble()})
        .bind(":ended", std::int64_t{ended})
        .bind(":disposed", disposed ? entry.seq() : 0)
        .bind(":seq", entry.seq())
        .run();
    if (vials) {
        change(transaction, cycle, "vials = 1");
    }
    if (said.isTrouble()) {
        change(transaction, cycle, "trouble = 1");
    }
    if (ended) {
        change(transaction, cycle, "ended = 1");
    }
    if (disposed) {
        change(transaction, cycle, "disposed = newest");
    }
    if (const auto* const reserved = entry.act<CycleReserved>()) {
        takeReserved(transaction, cycle, entry, *reserved);
    } else if (imported != nullptr) {
        takeImported(transaction, cycle, entry, *imported);
    }
    takeTimes(transaction, cycle, said);
}

} // namespace

std::span<const IndexTable> CycleIndex::tables() const
{
    static constexpr std::array<IndexTable, 2> mine{
        {{"p_cycle", "cycle, sterilizer, lot, purpose, at, counter, vials, trouble, ended, "
                     "disposed, newest"},
         {"p_cycle_lot", "lot, cycle, seq"}}};
    return mine;
}

void CycleIndex::take(WriteTransaction& transaction, const IndexedEntry& entry)
{
    if (!entry.has("ld")) {
        return;
    }
    const SaidOfCycle said = saidOfCycle(entry);
    for (const std::string_view id : entry.header().subjects) {
        if (hasPrefix(id, "ld")) {
            takeOf(transaction, id, entry, said);
        }
    }
}

} // namespace loadwarden
