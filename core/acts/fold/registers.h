#pragma once

#include "core/acts/fold/folding.h"

#include <cstdint>
#include <limits>
#include <string_view>

namespace loadwarden {

/// Every entry of the journal that is folded.
inline constexpr std::int64_t newest = std::numeric_limits<std::int64_t>::max();

/// Whether a fact is a revision of what has that id in the register.
template <class Recorded>
[[nodiscard]] bool isRevisionOf(const Fact& fact, std::string_view id)
{
    return std::holds_alternative<Recorded>(fact.origin->act)
           && fact.origin->subjects.front() == id;
}

/// The newest revision in a register that was recorded before entry `before`, or null. An amendment
/// without right has no effect on a register, so the first version counts.
template <class Recorded>
[[nodiscard]] const Fact* peekRevision(const FactBook& book, std::string_view id,
                                       std::int64_t before)
{
    const Fact* found = nullptr;
    for (const std::uint32_t index : book.about(id)) {
        const Fact& fact = book.facts()[index];
        if (fact.stands() && fact.origin->seq < before && isRevisionOf<Recorded>(fact, id)) {
            found = &fact;
        }
    }
    return found;
}

/// The same, and takes it: what the evidence is bound to belongs to it. So does what would be
/// bound if it had not been struck.
template <class Recorded>
[[nodiscard]] const Fact* findRevision(Folding& folding, std::string_view id, std::int64_t before)
{
    const FactBook& book = folding.book();
    const Fact* const found = peekRevision<Recorded>(book, id, before);
    const std::int64_t from = found == nullptr ? 0 : found->origin->seq;
    for (const std::uint32_t index : book.about(id)) {
        const Fact& fact = book.facts()[index];
        if (fact.origin->seq >= from && fact.origin->seq < before
            && isRevisionOf<Recorded>(fact, id)) {
            folding.take(fact, false);
        }
    }
    return found;
}

/// The first revision in a register, or null; takes it, and what was struck before it.
template <class Recorded>
[[nodiscard]] const Fact* findFirst(Folding& folding, std::string_view id)
{
    for (const std::uint32_t index : folding.book().about(id)) {
        const Fact& fact = folding.book().facts()[index];
        if (isRevisionOf<Recorded>(fact, id)) {
            folding.take(fact, false);
            if (fact.stands()) {
                return &fact;
            }
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
