#pragma once

#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_control, controls by the lot or the load that they were said to be for, and p_lot_number,
/// every number that a product's lot was said to have.
class ControlIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
