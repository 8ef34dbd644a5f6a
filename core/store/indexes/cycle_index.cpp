#include "core/store/indexes/cycle_index.h"

#include "core/cycle/cycle_words.h"
#include "core/store/imported_lot.h"
#include "core/store/indexes/cycle_marks.h"

#include <array>
#include <map>
#include <optional>

namespace loadwarden {
namespace {

/// What some entries say of one cycle, put together: one row is written for all of them.
struct Said {
    /// As the newest that says any of it.
    struct Names {
        std::string_view sterilizer;
        std::string_view lot;
        std::string_view purpose;
    };

    std::int64_t firstRecorded = 0; ///< ms
    bool vials = false;
    bool trouble = false;
    bool ended = false;
    std::int64_t disposed = 0; ///< seq; 0: not said
    std::int64_t newest = 0;   ///< seq
    std::optional<Names> names;
    std::optional<std::int64_t> at; ///< ms
    std::optional<std::int64_t> counter;
};

/// Takes what an entry says of a cycle. The entry outlives it.
void add(Said& all, const IndexedEntry& entry, const SaidOfCycle& said)
{
    // Nothing is open about a load of the time before.
    const auto* const imported = entry.act<HistoryImported>();
    if (all.newest == 0) {
        all.firstRecorded = entry.recordedMs();
    }
    all.newest = entry.seq();
    all.vials = all.vials || entry.has("bv");
    all.trouble = all.trouble || said.isTrouble();
    all.ended = all.ended || entry.act<CycleEnded>() != nullptr || imported != nullptr;
    if (entry.act<DispositionSigned>() != nullptr || imported != nullptr) {
        all.disposed = entry.seq();
    }
    if (const auto* const reserved = entry.act<CycleReserved>()) {
        all.names = {entry.subject("sz"), reserved->lot, wordOf(purposeWords, reserved->purpose)};
    } else if (imported != nullptr) {
        all.names = {entry.subject("sz"), imported->lot, importedPurpose};
        all.at = entry.entry()->happenedAt.at.ms;
    }
    for (const SaidTime& each : said.times) {
        if (each.mark == mark::start) {
            all.at = each.at;
        } else if (each.mark == mark::counter) {
            all.counter = each.at;
        }
    }
}

void change(WriteTransaction& transaction, std::string_view cycle, std::string_view column,
            std::int64_t value)
{
    transaction
        .statement("UPDATE p_cycle SET " + std::string(column) + " = :value WHERE cycle = :cycle")
        .bind(":value", value)
        .bind(":cycle", cycle)
        .run();
}

/// Writes it over what earlier entries say. Columns by which rows are found in order are touched
/// only where they change.
void write(WriteTransaction& transaction, std::string_view cycle, const Said& said)
{
    transaction
        .statement("INSERT INTO p_cycle (cycle, sterilizer, lot, purpose, at, counter, vials, "
                   "trouble, ended, disposed, newest) VALUES (:cycle, '', '', '', :at, -1, :vials, "
                   ":trouble, :ended, :disposed, :seq) ON CONFLICT (cycle) DO UPDATE SET "
                   "newest = excluded.newest, "
                   "vials = CASE WHEN excluded.vials = 1 THEN 1 ELSE p_cycle.vials END, "
                   "trouble = CASE WHEN excluded.trouble = 1 THEN 1 ELSE p_cycle.trouble END, "
                   "ended = CASE WHEN excluded.ended = 1 THEN 1 ELSE p_cycle.ended END")
        .bind(":cycle", cycle)
        .bind(":at", said.firstRecorded)
        .bind(":vials", std::int64_t{said.vials})
        .bind(":trouble", std::int64_t{said.trouble})
        .bind(":ended", std::int64_t{said.ended})
        .bind(":disposed", said.disposed)
        .bind(":seq", said.newest)
        .run();
    if (said.disposed != 0) {
        change(transaction, cycle, "disposed", said.disposed);
    }
    if (said.names) {
        transaction
            .statement("UPDATE p_cycle SET sterilizer = :sterilizer, lot = :lot, "
                       "purpose = :purpose WHERE cycle = :cycle")
            .bind(":sterilizer", said.names->sterilizer)
            .bind(":lot", said.names->lot)
            .bind(":purpose", said.names->purpose)
            .bind(":cycle", cycle)
            .run();
    }
    if (said.at) {
        change(transaction, cycle, "at", *said.at);
    }
    if (said.counter) {
        change(transaction, cycle, "counter", *said.counter);
    }
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

} // namespace

std::span<const IndexTable> CycleIndex::tables() const
{
    static constexpr std::array<IndexTable, 2> mine{
        {{"p_cycle", "cycle, sterilizer, lot, purpose, at, counter, vials, trouble, ended, "
                     "disposed, newest"},
         {"p_cycle_lot", "lot, cycle, seq"}}};
    return mine;
}

void CycleIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    std::map<std::string_view, Said> cycles;
    for (const IndexedEntry& entry : entries) {
        if (!entry.has("ld")) {
            continue;
        }
        const SaidOfCycle said = saidOfCycle(entry);
        for (const std::string_view id : entry.header().subjects) {
            if (!hasPrefix(id, "ld")) {
                continue;
            }
            add(cycles[id], entry, said);
            if (const auto* const reserved = entry.act<CycleReserved>()) {
                insertLot(transaction, id, reserved->lot, entry.seq());
            } else if (const auto* const imported = entry.act<HistoryImported>()) {
                insertLot(transaction, id, capitalLot(imported->lot), entry.seq());
            }
        }
    }
    for (const auto& [id, said] : cycles) {
        write(transaction, id, said);
    }
}

} // namespace loadwarden
