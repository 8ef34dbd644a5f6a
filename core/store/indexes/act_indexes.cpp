#include "core/store/indexes/act_indexes.h"

namespace loadwarden {

ActIndexes::ActIndexes()
{
    for (const IndexPart* const part : std::initializer_list<const IndexPart*>{
             &m_own, &m_cycles, &m_marks, &m_labels, &m_controls, &m_vials}) {
        m_tables.insert(m_tables.end(), part->tables().begin(), part->tables().end());
    }
}

void ActIndexes::take(WriteTransaction& transaction, const EntryHeader& header,
                      std::string_view bytes)
{
    const IndexedEntry entry(header, bytes);
    m_own.take(transaction, entry);
    m_cycles.take(transaction, entry);
    m_marks.take(transaction, entry);
    m_labels.take(transaction, entry);
    m_controls.take(transaction, entry);
    m_vials.take(transaction, entry);
}

} // namespace loadwarden
