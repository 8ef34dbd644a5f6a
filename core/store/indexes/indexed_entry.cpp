#include "core/store/indexes/indexed_entry.h"

#include "core/store/act_entry.h"
#include "core/store/store_error.h"

#include <algorithm>

namespace loadwarden {

IndexedEntry::IndexedEntry(const EntryHeader& header, std::string_view bytes) : m_header(header)
{
    try {
        Entry entry = understand(bytes, {});
        if (!std::holds_alternative<NotUnderstood>(entry.act)) {
            m_entry = std::move(entry);
        }
    } catch (const StoreError&) {
        // The bytes are no entry. Verification says so; an index goes on without it.
        m_entry.reset();
    }
}

std::string_view IndexedEntry::subject(std::string_view prefix) const
{
    const auto found = std::ranges::find_if(
        m_header.subjects, [prefix](std::string_view id) { return hasPrefix(id, prefix); });
    return found == m_header.subjects.end() ? std::string_view{} : *found;
}

} // namespace loadwarden
