#pragma once

#include "core/acts/fold/registers.h"

#include <algorithm>
#include <string_view>
#include <vector>

namespace loadwarden {

/// The newest revision of everything in a register, in the order in which each was first recorded.
/// The book outlives them.
template <class Recorded>
[[nodiscard]] std::vector<const Fact*> newestFacts(const FactBook& book)
{
    std::vector<const Fact*> found;
    std::vector<std::string_view> seen;
    for (const Fact& fact : book.facts()) {
        if (!std::holds_alternative<Recorded>(fact.origin->act)) {
            continue;
        }
        const std::string_view id = fact.origin->subjects.front();
        if (std::ranges::find(seen, id) != seen.end()) {
            continue;
        }
        seen.push_back(id);
        if (const Fact* const fresh = peekRevision<Recorded>(book, id, newest)) {
            found.push_back(fresh);
        }
    }
    return found;
}

} // namespace loadwarden
