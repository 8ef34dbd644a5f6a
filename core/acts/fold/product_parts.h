#pragma once

#include "core/acts/fold/folding.h"
#include "core/release/evidence.h"

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

// The parts of foldProducts(), in sources of their own.

namespace loadwarden {

/// The register's id in a bound name: "pr-1" of "pr-1@12".
[[nodiscard]] inline std::string idIn(const std::string& bound)
{
    return bound.substr(0, bound.find('@'));
}

/// A product of a record: bound name, and the name that it gets there.
using ProductNames = std::map<std::string, std::string>;

/// Every id with that prefix among the first subjects of facts of a kind.
template <class Act>
[[nodiscard]] std::vector<std::string> idsOf(const FactBook& book, std::string_view prefix)
{
    std::vector<std::string> ids;
    for (const Fact& fact : book.facts()) {
        const std::string_view id = fact.origin->subject(prefix);
        if (std::holds_alternative<Act>(fact.origin->act) && !id.empty()
            && std::ranges::find(ids, id) == ids.end()) {
            ids.emplace_back(id);
        }
    }
    return ids;
}

/// Whose controls and incubators a record needs.
struct VialsOfRecord {
    std::vector<const Vial*> all;
    std::set<std::string> own; ///< ids of those of the cycle itself
    std::set<std::string> incubators;
    std::set<std::string> ownIncubators;
};

/// Adds the controls of the vials' products and lots, once for each name of their product, and to
/// the incubators theirs.
void addControls(Folding& folding, EvidenceRecord& record, VialsOfRecord& vials,
                 const ProductNames& names);

void addIncubators(Folding& folding, EvidenceRecord& record, const VialsOfRecord& vials);

} // namespace loadwarden
