#include "core/desk/act_checks.h"

#include "core/desk/act_ids.h"
#include "core/desk/correction_checks.h"
#include "core/desk/cycle_state.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/desk/product_checks.h"
#include "core/desk/staff_checks.h"
#include "core/exchange/policy_reader.h"
#include "core/quantities/person.h"

#include <algorithm>
#include <map>
#include <set>

namespace loadwarden {
namespace {

/// What the journal holds, and what the acts before this one would add.
class Checks {
public:
    Checks(ReadSnapshot& snapshot, const Author& author, Instant now)
        : m_snapshot(snapshot), m_author(author), m_now(now), m_products(snapshot)
    {
    }

    std::optional<Refusal> check(const ToRecord& act)
    {
        if (act.happenedAt && act.happenedAt->at > m_now) {
            return Refusal{.why = RefusalWhy::inFuture};
        }
        if (auto refusal = checkPolicy(act)) {
            return refusal;
        }
        if (auto refusal = checkPaper(act)) {
            return refusal;
        }
        if (auto refusal =
                act.supersedes != 0 ? checkCorrection(m_snapshot, act, m_author) : checkIds(act)) {
            return refusal;
        }
        if (auto refusal = checkReferences(act)) {
            return refusal;
        }
        if (auto refusal = m_products.check(act.act)) {
            return refusal;
        }
        if (act.supersedes == 0) {
            if (auto refusal = checkCycle(act)) {
                return refusal;
            }
        }
        note(act);
        return std::nullopt;
    }

private:
    /// A cycle as the journal and the acts before this one have it.
    CycleState& stateOf(const std::string& cycle)
    {
        const auto found = m_cycles.find(cycle);
        if (found != m_cycles.end()) {
            return found->second;
        }
        return m_cycles.emplace(cycle, stateOfCycle(entriesAbout(m_snapshot, cycle), cycle))
            .first->second;
    }

    bool isKnown(const std::string& id)
    {
        return m_new.contains(id) || isMentioned(m_snapshot, id);
    }

    /// What was done before is not stamped with the time at which it is typed, and nobody gets
    /// another role by it.
    std::optional<Refusal> checkPaper(const ToRecord& act)
    {
        if (!act.paper) {
            return std::nullopt;
        }
        if (!act.happenedAt) {
            return Refusal{.why = RefusalWhy::timeNeeded};
        }
        const auto person = personById(peopleOf(m_snapshot), act.paper->by);
        if (!person) {
            return Refusal{.why = RefusalWhy::personUnknown, .subject = act.paper->by};
        }
        if (person->role != act.paper->role) {
            return Refusal{.why = RefusalWhy::paperRole, .subject = person->name};
        }
        return std::nullopt;
    }

    /// A policy is one that this program decides by, under the digest of its own bytes.
    static std::optional<Refusal> checkPolicy(const ToRecord& act)
    {
        const auto* const policy = std::get_if<PolicyRecorded>(&act.act);
        if (policy == nullptr) {
            return std::nullopt;
        }
        if (hexOf(hashOf(policy->toml)) != policy->digest) {
            return Refusal{.why = RefusalWhy::malformed,
                           .subject = "policy.recorded",
                           .detail = "its digest is not that of its text"};
        }
        const auto read = readPolicy(policy->toml, "policy");
        if (const auto* const errors = std::get_if<std::vector<PolicyError>>(&read)) {
            return Refusal{.why = RefusalWhy::malformed,
                           .subject = "policy.recorded",
                           .detail =
                               errors->empty() ? "it cannot be read" : textOf(errors->front())};
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkIds(const ToRecord& act)
    {
        for (const std::string& id : act.subjects) {
            if (std::holds_alternative<SterilizerRecorded>(act.act) && prefixOf(id) == "sz"
                && !canBeginALot(id)) {
                return Refusal{.why = RefusalWhy::badId, .subject = id};
            }
            const bool known = isKnown(id);
            if (!known && !mayBringIn(act, id)) {
                return Refusal{.why = RefusalWhy::unknown, .subject = id};
            }
            if (known && bringsInOnlyNew(act, id)) {
                return Refusal{.why = RefusalWhy::alreadyThere, .subject = id};
            }
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkReferences(const ToRecord& act)
    {
        for (const std::string& id : referencesOf(act.act)) {
            if (!isKnown(id)) {
                return Refusal{.why = RefusalWhy::unknown, .subject = id};
            }
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkCycle(const ToRecord& act)
    {
        for (const std::string& id : act.subjects) {
            if (prefixOf(id) != "ld" || std::holds_alternative<CycleReserved>(act.act)) {
                continue;
            }
            if (auto refusal = checkIn(act, id, stateOf(id))) {
                return refusal;
            }
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkIn(const ToRecord& act, const std::string& cycle,
                                   const CycleState& state)
    {
        const Instant happened = act.happenedAt ? act.happenedAt->at : m_now;
        if (!state.reserved) {
            return Refusal{.why = RefusalWhy::unknown, .subject = cycle};
        }
        if (std::holds_alternative<CycleStarted>(act.act)) {
            return state.started ? refuse(RefusalWhy::alreadyStarted, state) : std::nullopt;
        }
        if (std::holds_alternative<CycleEnded>(act.act)) {
            if (!state.started) {
                return refuse(RefusalWhy::notStarted, state);
            }
            if (state.ended) {
                return refuse(RefusalWhy::alreadyEnded, state);
            }
            return state.start && happened < *state.start ? refuse(RefusalWhy::beforeStart, state)
                                                          : std::nullopt;
        }
        if (isAny<ItemAdded, ItemMoved, PackageChecked, ItemReported>(act.act) && state.isTest()) {
            return refuse(RefusalWhy::notALoad, state);
        }
        if (const auto* const added = std::get_if<ItemAdded>(&act.act)) {
            for (const auto& [item, label] : state.labels) {
                if (item != act.subjects.front() && isSamePerson(label, added->label)) {
                    return Refusal{.why = RefusalWhy::alreadyThere, .subject = added->label};
                }
            }
        }
        if (isAny<TestConditionsRecorded, LeakRead, TestPhysicalJudged, TestVoidExplained,
                  SheetPlaced>(act.act)
            && !state.isTest()) {
            return refuse(RefusalWhy::notATest, state);
        }
        if (isAny<PhysicalRead, PhysicalVerified, ChemicalRead, BiologicalRead, BiologicalActivated,
                  BiologicalIncubated, PackageChecked, CycleUnloaded, TestPhysicalJudged, LeakRead,
                  AerationStarted, TraceRead, ItemDistributed, ItemUsed, ItemReported>(act.act)) {
            if (!state.ended) {
                return refuse(RefusalWhy::notEnded, state);
            }
            if (state.end && !isFromEndOn(happened, *state.end)) {
                return refuse(RefusalWhy::beforeEnd, state);
            }
        }
        return checkPlaced(act, state);
    }

    /// What an act is about must be in the cycle.
    std::optional<Refusal> checkPlaced(const ToRecord& act, const CycleState& state)
    {
        if (const auto* const moved = std::get_if<ItemMoved>(&act.act)) {
            // Of two cycles, and in the first of them only.
            const std::string item(act.subjects.front());
            return stateOf(moved->from).mentions.contains(item)
                       ? std::nullopt
                       : std::optional(Refusal{.why = RefusalWhy::notPlaced,
                                               .subject = item,
                                               .detail = stateOf(moved->from).lot});
        }
        if (std::holds_alternative<ItemDistributed>(act.act)) {
            const auto found = state.released.find(act.subjects.front());
            if (found == state.released.end() || !found->second) {
                return Refusal{.why = RefusalWhy::notReleased, .subject = act.subjects.front()};
            }
        }
        for (const std::string& id : act.subjects) {
            const std::string_view prefix = prefixOf(id);
            const bool isPart = prefix == "it" || prefix == "ci" || prefix == "bv" || prefix == "pd"
                                || prefix == "ar" || prefix == "tr";
            if (isPart && !mayBringIn(act, id) && !state.mentions.contains(id)
                && !isInMovedItem(id, state)) {
                return Refusal{.why = RefusalWhy::notPlaced, .subject = id, .detail = state.lot};
            }
        }
        return std::nullopt;
    }

    /// An indicator that came into the cycle in an item from another one.
    bool isInMovedItem(const std::string& id, const CycleState& state)
    {
        const std::vector<Entry> entries = entriesAbout(m_snapshot, id);
        return std::ranges::any_of(entries, [&](const Entry& entry) {
            return std::holds_alternative<ItemAdded>(entry.act)
                   && state.mentions.contains(entry.subject("it"));
        });
    }

    static std::optional<Refusal> refuse(RefusalWhy why, const CycleState& state)
    {
        return Refusal{.why = why, .subject = state.lot};
    }

    /// The journal as if the act were recorded.
    void note(const ToRecord& act)
    {
        m_products.note(act);
        m_new.insert(act.subjects.begin(), act.subjects.end());
        const Instant happened = act.happenedAt ? act.happenedAt->at : m_now;
        for (const std::string& id : act.subjects) {
            if (prefixOf(id) != "ld" || act.supersedes != 0) {
                continue;
            }
            CycleState& state = stateOf(id);
            state.mentions.insert(act.subjects.begin(), act.subjects.end());
            if (const auto* const added = std::get_if<ItemAdded>(&act.act)) {
                state.labels[act.subjects.front()] = added->label;
            }
            if (const auto* const reserved = std::get_if<CycleReserved>(&act.act)) {
                state.reserved = true;
                state.purpose = reserved->purpose;
                state.lot = reserved->lot;
            } else if (std::holds_alternative<CycleStarted>(act.act)) {
                state.started = true;
                state.start = happened;
            } else if (std::holds_alternative<CycleEnded>(act.act)) {
                state.ended = true;
                state.end = happened;
            }
        }
    }

    ReadSnapshot& m_snapshot;
    const Author& m_author;
    Instant m_now;
    ProductChecks m_products;
    std::map<std::string, CycleState> m_cycles;
    std::set<std::string> m_new;
};

} // namespace

std::optional<Refusal> checkActs(ReadSnapshot& snapshot, std::span<const ToRecord> acts,
                                 const Author& author, Instant now)
{
    Checks checks(snapshot, author, now);
    for (const ToRecord& act : acts) {
        if (auto refusal = checks.check(act)) {
            return refusal;
        }
    }
    return checkStaff(snapshot, acts, author);
}

} // namespace loadwarden
