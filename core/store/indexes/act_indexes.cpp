#include "core/store/indexes/act_indexes.h"

namespace loadwarden {

ActIndexes::ActIndexes()
{
    for (const IndexPart* const part : std::initializer_list<const IndexPart*>{
             &m_own, &m_cycles, &m_marks, &m_labels, &m_controls, &m_vials}) {
        m_tables.insert(m_tables.end(), part->tables().begin(), part->tables().end());
    }
}

void ActIndexes::take(WriteTransaction& transaction, std::span<const TakenEntry> entries)
{
    std::vector<IndexedEntry> understood;
    understood.reserve(entries.size());
    for (const TakenEntry& each : entries) {
        understood.emplace_back(each.header, each.bytes);
    }
    for (IndexPart* const part : std::initializer_list<IndexPart*>{
             &m_own, &m_cycles, &m_marks, &m_labels, &m_controls, &m_vials}) {
        part->take(transaction, understood);
    }
}

} // namespace loadwarden
