#pragma once

#include "core/acts/entry.h"
#include "core/journal/header.h"

#include <optional>
#include <string_view>

namespace loadwarden {

/// An entry while the indexes take it: its act is read once for all of them.
class IndexedEntry {
public:
    /// The header outlives this.
    IndexedEntry(const EntryHeader& header, std::string_view bytes);

    [[nodiscard]] const EntryHeader& header() const { return m_header; }
    [[nodiscard]] std::int64_t seq() const { return m_header.seq; }
    [[nodiscard]] std::int64_t recordedMs() const { return m_header.recordedAt.at.ms; }

    /// Whether this program knows the kind and the version, and the body is one of these.
    [[nodiscard]] bool isUnderstood() const { return m_entry.has_value(); }

    /// The first subject with that prefix; empty: none.
    [[nodiscard]] std::string_view subject(std::string_view prefix) const;
    [[nodiscard]] bool has(std::string_view prefix) const { return !subject(prefix).empty(); }

    /// The entry with its act; null where that is not understood.
    [[nodiscard]] const Entry* entry() const { return m_entry ? &*m_entry : nullptr; }

    /// The act, where it is of that sort; else null.
    template <class Act>
    [[nodiscard]] const Act* act() const
    {
        return m_entry ? std::get_if<Act>(&m_entry->act) : nullptr;
    }

private:
    const EntryHeader& m_header;
    std::optional<Entry> m_entry;
};

} // namespace loadwarden
