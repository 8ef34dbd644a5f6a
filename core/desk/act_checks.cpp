#include "core/desk/act_checks.h"

#include "core/acts/fold/harm.h"
#include "core/desk/cycle_state.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/quantities/person.h"
#include "core/store/act_entry.h"

#include <algorithm>
#include <array>
#include <map>
#include <set>

namespace loadwarden {
namespace {

/// Prefixes of what an act may bring in by naming it first; everything else must be there.
constexpr std::array<std::string_view, 10> registers = {"fa", "st", "po", "sz", "sp",
                                                        "pr", "pl", "pk", "dv", "in"};

std::string_view prefixOf(std::string_view id)
{
    return id.substr(0, std::min<std::size_t>(2, id.size()));
}

template <class... Acts>
bool isAny(const AnyAct& act)
{
    return (std::holds_alternative<Acts>(act) || ...);
}

/// Whether an act may name an id that nobody has named before.
bool mayBringIn(const ToRecord& act, std::string_view id)
{
    const std::string_view prefix = prefixOf(id);
    const bool isFirst = !act.subjects.empty() && act.subjects.front() == id;
    if (isAny<FacilityRecorded, StaffRecorded, PolicyRecorded, SterilizerRecorded,
              SpecificationRecorded, ProductRecorded, ProductLotRecorded, PackagingRecorded,
              DeviceRecorded, IncubatorRecorded>(act.act)) {
        return isFirst && std::ranges::find(registers, prefix) != registers.end();
    }
    if (std::holds_alternative<CycleReserved>(act.act)) {
        return prefix == "ld";
    }
    if (std::holds_alternative<ItemAdded>(act.act)) {
        return prefix == "it" || prefix == "ci";
    }
    if (std::holds_alternative<PcdPlaced>(act.act)) {
        return prefix == "pd" || prefix == "ci" || prefix == "bv";
    }
    if (std::holds_alternative<SheetPlaced>(act.act)) {
        return prefix == "ci";
    }
    if (std::holds_alternative<ControlPrepared>(act.act)) {
        return prefix == "bc";
    }
    if (std::holds_alternative<AerationStarted>(act.act)) {
        return prefix == "ar";
    }
    if (std::holds_alternative<IncidentOpened>(act.act)) {
        return prefix == "ic";
    }
    return false;
}

/// Ids that a body names and that must be in a register.
std::vector<std::string> referencesOf(const AnyAct& act)
{
    std::vector<std::string> ids;
    const auto add = [&ids](const std::string& id) {
        if (!id.empty()) {
            ids.push_back(id);
        }
    };
    const auto addIndicator = [&](const PlacedIndicator& indicator) {
        add(indicator.product);
        add(indicator.lot);
    };
    if (const auto* const item = std::get_if<ItemAdded>(&act)) {
        add(item->packaging);
        std::ranges::for_each(item->devices, add);
        std::ranges::for_each(item->internals, addIndicator);
        if (item->external) {
            addIndicator(*item->external);
        }
    } else if (const auto* const pcd = std::get_if<PcdPlaced>(&act)) {
        std::ranges::for_each(pcd->indicators, addIndicator);
        std::ranges::for_each(pcd->vials, addIndicator);
    } else if (const auto* const sheet = std::get_if<SheetPlaced>(&act)) {
        add(sheet->product);
        add(sheet->lot);
    } else if (const auto* const control = std::get_if<ControlPrepared>(&act)) {
        add(control->product);
        add(control->lot);
        add(control->forLoad);
    }
    return ids;
}

/// Whether a sterilizer's id ends as lot control numbers on labels begin: 1 to 8 digits and capital
/// letters, so that no two differ by case alone.
bool canBeginALot(std::string_view id)
{
    const std::string_view rest = id.substr(3);
    return rest.size() <= 8 && std::ranges::all_of(rest, [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
           });
}

/// What the journal holds, and what the acts before this one would add.
class Checks {
public:
    Checks(ReadSnapshot& snapshot, Instant now) : m_snapshot(snapshot), m_now(now) {}

    std::optional<Refusal> check(const ToRecord& act)
    {
        if (act.happenedAt && act.happenedAt->at > m_now) {
            return Refusal{.why = RefusalWhy::inFuture};
        }
        if (auto refusal = checkPaper(act)) {
            return refusal;
        }
        if (auto refusal = act.supersedes != 0 ? checkCorrection(act) : checkIds(act)) {
            return refusal;
        }
        if (auto refusal = checkStaff(act)) {
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

    std::optional<Refusal> checkPaper(const ToRecord& act)
    {
        if (act.paper && !isKnown(act.paper->by)) {
            return Refusal{.why = RefusalWhy::personUnknown, .subject = act.paper->by};
        }
        return std::nullopt;
    }

    /// One badge is one person, and somebody can always register staff.
    std::optional<Refusal> checkStaff(const ToRecord& act)
    {
        const auto* const staff = std::get_if<StaffRecorded>(&act.act);
        if (staff == nullptr) {
            return std::nullopt;
        }
        const std::string& id = act.subjects.front();
        bool hasOther = staff->role == Role::supervisor && staff->active;
        for (const Person& person : peopleOf(m_snapshot)) {
            if (person.id == id) {
                continue;
            }
            if (!staff->badge.empty() && isSamePerson(person.badge, staff->badge)) {
                return Refusal{.why = RefusalWhy::badgeTaken, .subject = staff->badge};
            }
            hasOther =
                hasOther || (person.role == Role::supervisor && person.active && person.hasPin);
        }
        if (!hasOther) {
            return Refusal{.why = RefusalWhy::lastSupervisor, .subject = staff->name};
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkIds(const ToRecord& act)
    {
        for (const std::string& id : act.subjects) {
            if (std::holds_alternative<SterilizerRecorded>(act.act) && !canBeginALot(id)) {
                return Refusal{.why = RefusalWhy::badId, .subject = id};
            }
            const bool known = isKnown(id);
            if (!known && !mayBringIn(act, id)) {
                return Refusal{.why = RefusalWhy::unknown, .subject = id};
            }
            const std::string_view prefix = prefixOf(id);
            const bool onlyNew = (std::holds_alternative<CycleReserved>(act.act) && prefix == "ld")
                                 || (std::holds_alternative<PcdPlaced>(act.act) && prefix != "ld")
                                 || (std::holds_alternative<ItemAdded>(act.act) && prefix == "ci")
                                 || isAny<ControlPrepared>(act.act)
                                 || (isAny<SheetPlaced>(act.act) && prefix == "ci")
                                 || (isAny<AerationStarted>(act.act) && prefix == "ar")
                                 || (isAny<IncidentOpened>(act.act) && prefix == "ic");
            if (known && onlyNew) {
                return Refusal{.why = RefusalWhy::alreadyThere, .subject = id};
            }
        }
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
        if (isAny<ItemAdded, ImmediateUseStated, PackageChecked>(act.act) && state.isTest()
            && !std::holds_alternative<ImmediateUseStated>(act.act)) {
            return refuse(RefusalWhy::notALoad, state);
        }
        if (isAny<TestConditionsRecorded, LeakRead, TestPhysicalJudged, TestVoidExplained,
                  SheetPlaced>(act.act)
            && !state.isTest()) {
            return refuse(RefusalWhy::notATest, state);
        }
        if (isAny<PhysicalRead, PhysicalVerified, ChemicalRead, BiologicalRead, PackageChecked,
                  CycleUnloaded, TestPhysicalJudged, LeakRead, AerationStarted, ItemDistributed,
                  ItemUsed>(act.act)) {
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
        if (std::holds_alternative<ItemMoved>(act.act)) {
            return std::nullopt; // of two cycles, and in the first of them only
        }
        for (const std::string& id : act.subjects) {
            const std::string_view prefix = prefixOf(id);
            const bool isPart = prefix == "it" || prefix == "ci" || prefix == "bv" || prefix == "pd"
                                || prefix == "ar";
            if (isPart && !mayBringIn(act, id) && !state.mentions.contains(id)) {
                return Refusal{.why = RefusalWhy::notPlaced, .subject = id, .detail = state.lot};
            }
        }
        return std::nullopt;
    }

    std::optional<Refusal> checkCorrection(const ToRecord& act)
    {
        JournalReader reader(m_snapshot);
        const auto stored = reader.entry(act.supersedes);
        if (!stored) {
            return Refusal{.why = RefusalWhy::noSuchEntry, .seq = act.supersedes};
        }
        if (act.reason.empty()) {
            return Refusal{.why = RefusalWhy::reasonNeeded};
        }
        const Entry entry = understand(stored->bytes, stored->hash);
        if (std::holds_alternative<EntryAnnotated>(act.act)) {
            return std::nullopt;
        }
        if (entry.subjects.empty()) {
            return Refusal{.why = RefusalWhy::notCorrectable, .seq = act.supersedes};
        }
        return checkCurrent(act, entry);
    }

    std::optional<Refusal> checkCurrent(const ToRecord& act, const Entry& entry)
    {
        const std::vector<Entry> entries = entriesAbout(m_snapshot, entry.subjects.front());
        const FactBook book(entries);
        const bool rereads = isAny<ChemicalReread, BiologicalReread>(act.act);
        for (const Fact& fact : book.facts()) {
            const bool isIn = std::ranges::any_of(
                fact.chain, [&](const Entry* each) { return each->seq == entry.seq; });
            if (!isIn) {
                continue;
            }
            if (isFinal(fact.origin->act)) {
                return Refusal{.why = RefusalWhy::notCorrectable, .seq = entry.seq};
            }
            if (!fact.stands() || fact.current().seq != entry.seq) {
                const std::int64_t now = fact.stands() ? fact.current().seq : fact.struckBy->seq;
                return Refusal{.why = RefusalWhy::notCurrent, .seq = now};
            }
            const bool sameKind = act.act.index() == fact.origin->act.index();
            const bool fits = std::holds_alternative<EntryVoided>(act.act) || rereads || sameKind;
            if (!fits || act.subjects != entry.subjects) {
                return Refusal{.why = RefusalWhy::otherFact, .seq = entry.seq};
            }
            return std::nullopt;
        }
        return Refusal{.why = RefusalWhy::notCorrectable, .seq = entry.seq};
    }

    static std::optional<Refusal> refuse(RefusalWhy why, const CycleState& state)
    {
        return Refusal{.why = why, .subject = state.lot};
    }

    /// The journal as if the act were recorded.
    void note(const ToRecord& act)
    {
        m_new.insert(act.subjects.begin(), act.subjects.end());
        const Instant happened = act.happenedAt ? act.happenedAt->at : m_now;
        for (const std::string& id : act.subjects) {
            if (prefixOf(id) != "ld" || act.supersedes != 0) {
                continue;
            }
            CycleState& state = stateOf(id);
            state.mentions.insert(act.subjects.begin(), act.subjects.end());
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
    Instant m_now;
    std::map<std::string, CycleState> m_cycles;
    std::set<std::string> m_new;
};

} // namespace

std::optional<Refusal> checkActs(ReadSnapshot& snapshot, std::span<const ToRecord> acts,
                                 Instant now)
{
    Checks checks(snapshot, now);
    for (const ToRecord& act : acts) {
        if (auto refusal = checks.check(act)) {
            return refusal;
        }
    }
    return std::nullopt;
}

} // namespace loadwarden
