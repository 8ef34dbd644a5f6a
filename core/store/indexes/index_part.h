#pragma once

#include "core/store/indexes/indexed_entry.h"
#include "core/store/journal_index.h"

#include <span>

namespace loadwarden {

/// Some of the tables of ActIndexes. What JournalIndex asks of take() is asked here, too.
class IndexPart {
public:
    virtual ~IndexPart() = default;

    [[nodiscard]] virtual std::span<const IndexTable> tables() const = 0;
    virtual void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) = 0;

protected:
    IndexPart() = default;
    IndexPart(const IndexPart&) = default;
    IndexPart& operator=(const IndexPart&) = default;
};

} // namespace loadwarden
