#pragma once

#include "core/acts/fold/folding.h"

#include <cstdint>
#include <limits>
#include <string_view>

namespace loadwarden {

/// Every entry of the journal that is folded.
inline constexpr std::int64_t newest = std::numeric_limits<std::int64_t>::max();

/// The newest revision in a register that was recorded before entry `before`, or null. Takes the
/// fact: what the evidence is bound to belongs to it. An amendment without right has no effect on a
/// register, so the first version counts.
template <class Recorded>
[[nodiscard]] const Fact* findRevision(Folding& folding, std::string_view id, std::int64_t before)
{
    const Fact* found = nullptr;
    const FactBook& book = folding.book();
    for (const std::uint32_t index : book.about(id)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && fact.origin->seq < before
            && std::holds_alternative<Recorded>(fact.origin->act)
            && fact.origin->subjects.front() == id) {
            found = &fact;
        }
    }
    if (found != nullptr) {
        folding.take(*found, false);
    }
    return found;
}

/// The first revision in a register, or null; takes it.
template <class Recorded>
[[nodiscard]] const Fact* findFirst(Folding& folding, std::string_view id)
{
    const FactBook& book = folding.book();
    for (const std::uint32_t index : book.about(id)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && std::holds_alternative<Recorded>(fact.origin->act)
            && fact.origin->subjects.front() == id) {
            folding.take(fact, false);
            return &fact;
        }
    }
    return nullptr;
}

/// The value of the newest revision before an entry, or null.
template <class Recorded>
[[nodiscard]] const Recorded* findRecorded(Folding& folding, std::string_view id,
                                           std::int64_t before = newest)
{
    const Fact* const found = findRevision<Recorded>(folding, id, before);
    return found == nullptr ? nullptr : &std::get<Recorded>(found->current().act);
}

} // namespace loadwarden
