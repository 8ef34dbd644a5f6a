#pragma once

#include "core/acts/entry.h"
#include "core/journal/header.h"

#include <optional>
#include <string_view>

namespace loadwarden {

/// An entry while the indexes take it: its act is read at the first asking, once for all of them.
class IndexedEntry {
public:
    /// Both outlive this.
    IndexedEntry(const EntryHeader& header, std::string_view bytes);

    [[nodiscard]] const EntryHeader& header() const { return m_header; }
    [[nodiscard]] std::int64_t seq() const { return m_header.seq; }
    [[nodiscard]] std::int64_t recordedMs() const { return m_header.recordedAt.at.ms; }
    [[nodiscard]] bool isOf(std::string_view kind) const { return m_header.kind == kind; }

    /// Whether this program knows the kind and the version.
    [[nodiscard]] bool isUnderstood() const { return m_isUnderstood; }

    /// The first subject with that prefix; empty: none.
    [[nodiscard]] std::string_view subject(std::string_view prefix) const;
    [[nodiscard]] bool has(std::string_view prefix) const { return !subject(prefix).empty(); }

    /// The entry with its act; null where that cannot be read.
    [[nodiscard]] const Entry* entry();

    /// The act, where it is of that sort; else null. `kind` is what acts.def calls it.
    template <class Act>
    [[nodiscard]] const Act* act(std::string_view kind)
    {
        return isOf(kind) && entry() != nullptr ? std::get_if<Act>(&entry()->act) : nullptr;
    }

private:
    const EntryHeader& m_header;
    std::string_view m_bytes;
    bool m_isUnderstood = false;
    bool m_isRead = false;
    std::optional<Entry> m_entry;
};

} // namespace loadwarden
