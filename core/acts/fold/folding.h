#pragma once

#include "core/acts/fold/facts.h"

#include <algorithm>
#include <cstdint>
#include <string_view>
#include <vector>

namespace loadwarden {

/// A fold while it goes on: the facts, and which of them went into the evidence.
class Folding {
public:
    explicit Folding(const FactBook& book) : m_book(book), m_taken(book.facts().size()) {}

    [[nodiscard]] const FactBook& book() const { return m_book; }

    /// Notes that a fact went into the evidence; `own`: of the cycle itself, not of another's or a
    /// register's.
    void take(const Fact& fact, bool own)
    {
        auto& taken = m_taken[static_cast<std::size_t>(&fact - m_book.facts().data())];
        taken = std::max(taken, own ? Taken::own : Taken::other);
    }
    [[nodiscard]] bool isTaken(const Fact& fact) const { return takenAs(fact) != Taken::no; }
    [[nodiscard]] bool isOwn(const Fact& fact) const { return takenAs(fact) == Taken::own; }

    void misfit(const Entry& entry, MisfitWhy why) { m_misfits.push_back({entry.seq, why}); }
    [[nodiscard]] const std::vector<Misfit>& misfits() const { return m_misfits; }

    /// Calls visit(const Fact&) for every fact of that kind about something, in order, and takes
    /// it; also struck ones, which the visitor may pass over.
    template <class Act, class Visit>
    void each(std::string_view id, bool own, Visit visit)
    {
        for (const std::uint32_t index : m_book.about(id)) {
            const Fact& fact = m_book.facts()[index];
            if (std::holds_alternative<Act>(fact.origin->act)) {
                take(fact, own);
                visit(fact);
            }
        }
    }

    /// The same for facts that stand, version by version that counts: visit(entry, act).
    template <class Act, class Visit>
    void eachValue(std::string_view id, bool own, Visit visit)
    {
        each<Act>(id, own, [&](const Fact& fact) {
            if (fact.stands()) {
                for (const Entry* const entry : fact.counting) {
                    visit(*entry, std::get<Act>(entry->act));
                }
            }
        });
    }

private:
    enum class Taken : std::uint8_t { no, other, own };

    [[nodiscard]] Taken takenAs(const Fact& fact) const
    {
        return m_taken[static_cast<std::size_t>(&fact - m_book.facts().data())];
    }

    const FactBook& m_book;
    std::vector<Taken> m_taken;
    std::vector<Misfit> m_misfits;
};

} // namespace loadwarden
