#include "core/store/indexes/vial_index.h"

#include <array>

namespace loadwarden {
namespace {

void note(WriteTransaction& transaction, std::string_view vial, std::string_view cycle,
          std::int64_t seq)
{
    transaction
        .statement("INSERT INTO p_vial (vial, cycle, product, incubator, incubated, finished, "
                   "newest) VALUES (:vial, :cycle, '', '', 0, 0, :seq) ON CONFLICT (vial) "
                   "DO UPDATE SET newest = excluded.newest")
        .bind(":vial", vial)
        .bind(":cycle", cycle)
        .bind(":seq", seq)
        .run();
}

void setFinished(WriteTransaction& transaction, std::string_view vial, bool finished)
{
    transaction.statement("UPDATE p_vial SET finished = :finished WHERE vial = :vial")
        .bind(":finished", std::int64_t{finished})
        .bind(":vial", vial)
        .run();
}

void takePlaced(WriteTransaction& transaction, const IndexedEntry& entry, const PcdPlaced& placed)
{
    for (const PlacedIndicator& vial : placed.vials) {
        note(transaction, vial.id, entry.subject("ld"), entry.seq());
        transaction
            .statement("UPDATE p_vial SET cycle = :cycle, product = :product WHERE vial = :vial")
            .bind(":cycle", entry.subject("ld"))
            .bind(":product", vial.product)
            .bind(":vial", vial.id)
            .run();
    }
}

/// What an entry does to whether a vial is finished; nullopt: nothing.
std::optional<bool> finishes(const IndexedEntry& entry)
{
    if (entry.act<EntryVoided>() != nullptr) {
        return false;
    }
    if (entry.act<BiologicalLost>() != nullptr || entry.act<BiologicalVoided>() != nullptr) {
        return true;
    }
    if (const auto* const read = entry.act<BiologicalRead>()) {
        return read->seen != Seen::unclear && entry.entry()->supersedes == 0;
    }
    if (const auto* const read = entry.act<BiologicalReread>()) {
        return read->seen != Seen::unclear;
    }
    return entry.act<BiologicalUnsettled>() != nullptr ? std::optional(true) : std::nullopt;
}

void takeVial(WriteTransaction& transaction, std::string_view vial, const IndexedEntry& entry)
{
    note(transaction, vial, entry.subject("ld"), entry.seq());
    if (entry.act<BiologicalIncubated>() != nullptr) {
        transaction
            .statement("UPDATE p_vial SET incubator = :incubator, incubated = :incubated "
                       "WHERE vial = :vial")
            .bind(":incubator", entry.subject("in"))
            .bind(":incubated", entry.entry()->happenedAt.at.ms)
            .bind(":vial", vial)
            .run();
    }
    if (const auto finished = finishes(entry)) {
        setFinished(transaction, vial, *finished);
    }
}

void takeOne(WriteTransaction& transaction, const IndexedEntry& entry)
{
    if (const auto* const placed = entry.act<PcdPlaced>()) {
        takePlaced(transaction, entry, *placed);
        return;
    }
    for (const std::string_view id : entry.header().subjects) {
        if (hasPrefix(id, "bv")) {
            takeVial(transaction, id, entry);
        }
    }
}

} // namespace

std::span<const IndexTable> VialIndex::tables() const
{
    static constexpr std::array<IndexTable, 1> mine{
        {{"p_vial", "vial, cycle, product, incubator, incubated, finished, newest"}}};
    return mine;
}

void VialIndex::take(WriteTransaction& transaction, std::span<const IndexedEntry> entries)
{
    for (const IndexedEntry& entry : entries) {
        takeOne(transaction, entry);
    }
}

} // namespace loadwarden
