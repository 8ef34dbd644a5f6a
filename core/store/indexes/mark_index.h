#pragma once

#include "core/store/indexes/cycle_marks.h"
#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_mark, p_reading and p_specification_used: what decides which cycles are in reach of another.
/// Nothing is ever taken back, so that what was said as of an earlier entry is known.
class MarkIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
