#pragma once

#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_own: entries about something in a register itself. An act that is about something more
/// particular (of a sterilizer's subjects a load, of a product's a lot) belongs to that, unless it
/// is an incident's or is not understood. What strikes or annotates belongs to all that it names.
class OwnIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
