#include "core/acts/fold/facts.h"

#include "core/acts/fold/harm.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool isReread(const AnyAct& act)
{
    return std::holds_alternative<ChemicalReread>(act)
           || std::holds_alternative<BiologicalReread>(act);
}

bool anyCounting(const Fact& fact, bool (*which)(const Entry&))
{
    return std::ranges::any_of(fact.counting, [which](const Entry* each) { return which(*each); });
}

/// Whether all subjects of a fact are among those of its correction.
bool isAboutTheSame(const Entry& correction, const Fact& fact)
{
    return std::ranges::all_of(fact.origin->subjects,
                               [&](const auto& id) { return correction.isAbout(id); });
}

/// The newest version, which the next correction must name.
const Entry& headOf(const Fact& fact)
{
    const Entry* newest = fact.origin;
    for (const Entry* const each : fact.chain) {
        if (!std::holds_alternative<EntryVoided>(each->act)) {
            newest = each;
        }
    }
    return *newest;
}

/// Whether somebody may soften a fact: another person than every author of it, a lead or
/// supervisor, of higher right than each; a supervisor's with another supervisor.
bool maySoften(const Entry& corrector, const Fact& fact)
{
    if (corrector.role < Role::lead) {
        return false;
    }
    for (const Entry* const version : fact.chain) {
        if (std::holds_alternative<EntryVoided>(version->act)) {
            continue;
        }
        const auto allows = [&corrector](std::string_view author, Role role) {
            const bool higher = corrector.role > role || corrector.role == Role::supervisor;
            return !isNamed(author) || (isAnotherPerson(corrector.actor, author) && higher);
        };
        if (!allows(version->actor, version->role)
            || (version->paper && !allows(version->paper->by, version->paper->role))) {
            return false;
        }
    }
    return isNamed(corrector.actor);
}

} // namespace

Act actOf(const Entry& entry)
{
    const bool typed = entry.paper.has_value();
    return {.by = typed ? entry.paper->by : entry.actor,
            .role = typed ? std::min(entry.role, entry.paper->role) : entry.role,
            .happenedAt = entry.happenedAt.at,
            .recordedAt = entry.recordedAt.at};
}

std::vector<const Entry*> pointersTo(std::span<const Entry> entries)
{
    std::vector<const Entry*> pointers;
    pointers.reserve(entries.size());
    for (const Entry& entry : entries) {
        pointers.push_back(&entry);
    }
    return pointers;
}

FactBook::FactBook(std::span<const Entry> entries) : FactBook(pointersTo(entries)) {}

FactBook::FactBook(EntrySpan entries) : m_entries(entries.begin(), entries.end())
{
    m_facts.reserve(entries.size());
    for (const Entry* const each : entries) {
        const Entry& entry = *each;
        if (std::holds_alternative<NotUnderstood>(entry.act)) {
            misfit(entry, MisfitWhy::notUnderstood);
        } else if (std::holds_alternative<EntryVoided>(entry.act)) {
            strike(entry);
        } else if (entry.supersedes != 0 && !isReread(entry.act)
                   && !std::holds_alternative<EntryAnnotated>(entry.act)) {
            amend(entry);
        } else {
            add(entry);
        }
    }
    findSubjects();
}

/// Notes what the facts are about; an amendment may be about more than the origin.
void FactBook::findSubjects()
{
    for (std::uint32_t index = 0; index < m_facts.size(); ++index) {
        for (const Entry* const version : m_facts[index].chain) {
            if (!std::holds_alternative<EntryVoided>(version->act)) {
                for (const std::string& id : version->subjects) {
                    m_subjects.add(id, index);
                }
            }
        }
    }
    m_subjects.makeReady();
}

std::span<const std::uint32_t> FactBook::about(std::string_view id) const
{
    return m_subjects.of(id);
}

void FactBook::add(const Entry& entry)
{
    m_facts.push_back({.origin = &entry, .chain = Versions(&entry), .counting = Versions(&entry)});
}

Fact* FactBook::factOf(std::int64_t seq)
{
    // Most of what is folded has no correction; nothing is asked for then.
    for (; m_known < m_facts.size(); ++m_known) {
        m_bySeq.emplace(m_facts[m_known].origin->seq, static_cast<std::uint32_t>(m_known));
    }
    const auto found = m_bySeq.find(seq);
    return found == m_bySeq.end() ? nullptr : &m_facts[found->second];
}

void FactBook::amend(const Entry& entry)
{
    if (isFinal(entry.act)) {
        misfit(entry, MisfitWhy::finalAct);
        return;
    }
    Fact* const fact = factOf(entry.supersedes);
    std::optional<MisfitWhy> stray;
    if (fact == nullptr) {
        stray = MisfitWhy::nothingThere;
    } else if (fact->origin->act.index() != entry.act.index() || !isAboutTheSame(entry, *fact)) {
        stray = MisfitWhy::otherFact;
    } else if (!fact->stands()) {
        stray = MisfitWhy::alreadyStruck;
    }
    if (stray) {
        // Taken as if it had been entered anew, so that no harm is lost.
        misfit(entry, *stray);
        add(entry);
        return;
    }
    const bool isCurrent = headOf(*fact).seq == entry.supersedes;
    const bool positive = anyCounting(*fact, makesPositive);
    const bool softens = anyCounting(*fact, mayHarm)
                         && !std::ranges::all_of(fact->counting, [&entry](const Entry* each) {
                                return harmsAtLeast(entry, *each);
                            });
    if (!isCurrent) {
        misfit(entry, MisfitWhy::overtaken);
    } else if (softens && positive) {
        misfit(entry, MisfitWhy::positiveStays);
    } else if (softens && !maySoften(entry, *fact)) {
        misfit(entry, MisfitWhy::noRight);
    } else {
        fact->counting.clear();
        fact->replacedBy = &entry;
    }
    fact->counting.push_back(&entry);
    fact->chain.push_back(&entry);
    const auto index = static_cast<std::uint32_t>(fact - m_facts.data());
    m_bySeq.emplace(entry.seq, index);
}

void FactBook::strike(const Entry& entry)
{
    Fact* const fact = factOf(entry.supersedes);
    if (fact == nullptr) {
        misfit(entry, MisfitWhy::nothingThere);
        return;
    }
    if (!isAboutTheSame(entry, *fact)) {
        misfit(entry, MisfitWhy::otherFact);
    } else if (isFinal(fact->origin->act)) {
        misfit(entry, MisfitWhy::finalAct);
    } else if (!fact->stands()) {
        misfit(entry, MisfitWhy::alreadyStruck);
    } else if (headOf(*fact).seq != entry.supersedes) {
        misfit(entry, MisfitWhy::overtaken);
    } else if (anyCounting(*fact, makesPositive)) {
        misfit(entry, MisfitWhy::positiveStays);
    } else if (anyCounting(*fact, mayHarm) && !maySoften(entry, *fact)) {
        misfit(entry, MisfitWhy::noRight);
    } else {
        fact->struckBy = &entry;
    }
    fact->chain.push_back(&entry);
}

} // namespace loadwarden
