#pragma once

#include "core/exchange/evidence/object_types.h"
#include "core/release/evidence.h"

#include <nlohmann/json.hpp>

#include <optional>
#include <string>
#include <vector>

/// Records made of the format's own tables, so that a field that is new in them is tested by
/// itself.
namespace loadwarden::tests {

/// Keeps the order of fields.
using TableJson = nlohmann::ordered_json;

/// A field of the tables that holds no object, and how it is reached from the record.
struct Leaf {
    struct Step {
        const evidence_format::ObjectType* type; ///< whose field it is
        const evidence_format::Field* field;
    };
    std::vector<Step> steps; ///< the last is the leaf
    /// What ends the way: the last step's rule, or its element's.
    [[nodiscard]] const evidence_format::Rule& rule() const;
    [[nodiscard]] std::string name() const; ///< "/load/items/0/label"
};

/// All of a record.
[[nodiscard]] const std::vector<Leaf>& allLeaves();

/// Values that a leaf may take, its extremes among them; where the tables do not know its form,
/// what is known of it here.
[[nodiscard]] const std::vector<TableJson>& valuesOf(const Leaf& leaf);

/// Records that have little but that leaf: more than one where what it may be depends on what
/// stands beside it. The same place of the list has the same beside it, whatever the value.
[[nodiscard]] std::vector<TableJson> recordsWith(const Leaf& leaf, const TableJson& value);

/// With the stored specifications; nullopt: it was refused.
[[nodiscard]] std::optional<EvidenceRecord> readTable(const TableJson& json);

/// Sets a leaf of a record, so that another record is read: in the first element of each list on
/// the way or, where that is refused or says nothing new, in another of the nearest list, or in one
/// of its own. False: there was no such place, and the record is as it was.
bool grow(TableJson& record, const Leaf& leaf, const TableJson& value);

/// A record of a load with every field that can stand together, and one of a test with every field
/// of the test.
[[nodiscard]] const std::vector<TableJson>& fullRecords();

} // namespace loadwarden::tests
