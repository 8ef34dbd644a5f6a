#include "core/acts/fold/readings.h"

#include "core/acts/fold/registers.h"
#include "core/acts/fold/seen.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool isVersion(const Entry* entry)
{
    return seenIn(entry->act).has_value();
}

SeenRank rankOf(const Entry& entry)
{
    return rankOf(entry, *seenIn(entry.act));
}

/// Whether a reading amends another; one that follows another was read.
bool isAmendment(const Entry& entry)
{
    return entry.supersedes != 0 && !std::holds_alternative<ChemicalReread>(entry.act)
           && !std::holds_alternative<BiologicalReread>(entry.act);
}

/// Whether somebody read it, or typed or amended a reading that he gives as his own.
bool isBy(const Entry& entry, std::string_view person)
{
    return isSamePerson(actOf(entry).by, person);
}

/// The act of a correction, which is done when it is recorded.
Act correctionBy(const Entry& entry)
{
    Act act = actOf(entry);
    act.happenedAt = act.recordedAt;
    return act;
}

} // namespace

Readings::Readings(Folding& folding, std::string_view id, bool own)
{
    for (const std::uint32_t index : folding.book().about(id)) {
        const Fact& fact = folding.book().facts()[index];
        // Of a vial named beside a chemical indicator the act says nothing, nor the other way
        // round.
        if (seenIn(fact.origin->act) && isChemical(fact.origin->act) == hasPrefix(id, "ci")) {
            folding.take(fact, own);
            m_facts.push_back(&fact);
        }
    }
}

std::int64_t Readings::firstRead() const
{
    return m_facts.empty() ? newest : m_facts.front()->origin->seq;
}

std::vector<IndicatorReading> Readings::take() const
{
    std::vector<IndicatorReading> readings;
    for (const Fact* const fact : m_facts) {
        for (const Entry* const entry : fact->chain) {
            if (!isVersion(entry)) {
                continue;
            }
            const bool counts = std::ranges::find(fact->counting, entry) != fact->counting.end();
            // What was amended to something no better is said by what stands in its place.
            if (!counts && rankOf(*entry) <= rankOf(fact->current())) {
                continue;
            }
            IndicatorReading reading = readingOf(*fact, *entry);
            if (!fact->stands()) {
                reading.voided = correctionBy(*fact->struckBy);
            } else if (!counts) {
                reading.voided = correctionBy(*fact->replacedBy);
            }
            readings.push_back(std::move(reading));
        }
    }
    return readings;
}

IndicatorReading Readings::readingOf(const Fact& fact, const Entry& entry) const
{
    IndicatorReading reading{.seen = *seenIn(entry.act), .act = actOf(entry), .voided = {}};
    if (entry.paper && spokeElsewhere(entry.actor, fact)) {
        // Nobody types himself a second reader.
        reading.act.by = entry.actor;
    }
    if (&entry == fact.origin && isAmendment(entry) && rankOf(entry) == SeenRank::good) {
        // An amendment of what is struck or not there: nobody has looked.
        reading.voided = correctionBy(entry);
    }
    if (&entry == fact.origin || isBy(*fact.origin, reading.act.by)) {
        return reading;
    }
    // Who amends has not looked: a good answer, and an unclear one that was so before, stay with
    // who read it.
    const SeenRank rank = rankOf(entry);
    if (rank == SeenRank::good || rank == rankOf(*fact.origin)) {
        const Act first = actOf(*fact.origin);
        reading.act.by = first.by;
        reading.act.role = std::min(reading.act.role, first.role);
    }
    if (rank == SeenRank::good && needsAnotherReader(fact)) {
        reading.voided = correctionBy(entry);
    }
    return reading;
}

/// Whether somebody gave or amended another reading of the indicator as his own.
bool Readings::spokeElsewhere(std::string_view person, const Fact& fact) const
{
    return std::ranges::any_of(m_facts, [&](const Fact* other) {
        return other != &fact && std::ranges::any_of(other->chain, [person](const Entry* entry) {
                   return isVersion(entry) && isBy(*entry, person);
               });
    });
}

/// Whether a good answer that somebody else amended must be read anew: it was bad before, so that
/// who took that out would be the one to pass it, or one of its authors has read the indicator
/// besides, so that he could be his own second reader.
bool Readings::needsAnotherReader(const Fact& fact) const
{
    return std::ranges::any_of(fact.chain, [&](const Entry* entry) {
        return isVersion(entry)
               && (rankOf(*entry) == SeenRank::bad || spokeElsewhere(actOf(*entry).by, fact)
                   || spokeElsewhere(entry->actor, fact));
    });
}

} // namespace loadwarden
