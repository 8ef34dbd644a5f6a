#pragma once

#include "core/store/indexes/index_part.h"

namespace loadwarden {

/// p_label: the labels of items in every load in which they were said to be. A label stands there
/// as labels are compared (foldedPerson()), so that one that is typed in another way is found.
class LabelIndex final : public IndexPart {
public:
    [[nodiscard]] std::span<const IndexTable> tables() const override;
    void take(WriteTransaction& transaction, std::span<const IndexedEntry> entries) override;
};

} // namespace loadwarden
