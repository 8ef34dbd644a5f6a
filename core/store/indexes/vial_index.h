#pragma once

#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_vial, a row a vial as last said. A reading that came too early finishes it here, too: its load
/// is not disposed then.
class VialIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
