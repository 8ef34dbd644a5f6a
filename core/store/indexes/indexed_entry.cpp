#include "core/store/indexes/indexed_entry.h"

#include "core/store/act_entry.h"
#include "core/store/store_error.h"

#include <algorithm>
#include <charconv>

namespace loadwarden {
namespace {

/// The version stands behind the kind (core/journal/FORMAT.md): "kind":"word","v":1. 0: it does not.
std::int32_t versionOf(const EntryHeader& header, std::string_view bytes)
{
    constexpr std::string_view between = "\",\"v\":";
    const auto end =
        static_cast<std::size_t>(header.kind.data() + header.kind.size() - bytes.data());
    const std::string_view rest = bytes.substr(end);
    std::int32_t version = 0;
    if (rest.starts_with(between)) {
        std::from_chars(rest.data() + between.size(), rest.data() + rest.size(), version);
    }
    return version;
}

} // namespace

IndexedEntry::IndexedEntry(const EntryHeader& header, std::string_view bytes)
    : m_header(header), m_bytes(bytes)
{
    const KindOfAct* const known = findKind(header.kind);
    const std::int32_t version = versionOf(header, bytes);
    m_isUnderstood = known != nullptr && version > 0 && version <= known->version;
}

std::string_view IndexedEntry::subject(std::string_view prefix) const
{
    const auto found = std::ranges::find_if(
        m_header.subjects, [prefix](std::string_view id) { return hasPrefix(id, prefix); });
    return found == m_header.subjects.end() ? std::string_view{} : *found;
}

const Entry* IndexedEntry::entry()
{
    if (!m_isRead) {
        m_isRead = true;
        if (m_isUnderstood) {
            try {
                m_entry = understand(m_bytes, {});
            } catch (const StoreError&) {
                // The bytes are no entry. Verification says so; an index goes on without it.
                m_entry.reset();
            }
        }
    }
    return m_entry ? &*m_entry : nullptr;
}

} // namespace loadwarden
