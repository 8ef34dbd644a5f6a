#pragma once

#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_cycle, a row a load or test as last said, and p_cycle_lot, every lot control number ever said.
class CycleIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
