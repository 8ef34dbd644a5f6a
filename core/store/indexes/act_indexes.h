#pragma once

#include "core/store/indexes/control_index.h"
#include "core/store/indexes/cycle_index.h"
#include "core/store/indexes/label_index.h"
#include "core/store/indexes/mark_index.h"
#include "core/store/indexes/own_index.h"
#include "core/store/indexes/vial_index.h"

#include <vector>

namespace loadwarden {

/// By which rules ActIndexes fills its tables. Raised whenever it makes anything else of an entry,
/// also by understanding more kinds: then the tables are filled anew (rebuildIndexes()).
inline constexpr std::int64_t indexRules = 4;

/// The tables by which cycles, labels, controls and vials are found (resources/store/0002.sql). An
/// act that is not understood is found by its subjects and breaks nothing.
class ActIndexes final : public JournalIndex {
public:
    ActIndexes();

    [[nodiscard]] std::span<const IndexTable> tables() const override { return m_tables; }
    void take(WriteTransaction& transaction, std::span<const TakenEntry> entries) override;

private:
    OwnIndex m_own;
    CycleIndex m_cycles;
    MarkIndex m_marks;
    LabelIndex m_labels;
    ControlIndex m_controls;
    VialIndex m_vials;
    std::vector<IndexTable> m_tables;
};

} // namespace loadwarden
