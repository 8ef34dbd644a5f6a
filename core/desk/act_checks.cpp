#include "core/desk/act_checks.h"

#include "core/acts/fold/harm.h"
#include "core/desk/cycle_state.h"
#include "core/desk/journal_entries.h"
#include "core/desk/people.h"
#include "core/exchange/policy_reader.h"
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

/// Whether a sterilizer's id, sz- and a rest, ends as lot control numbers on labels begin: 1 to 8
/// digits and capital letters, so that no two differ by case alone.
bool canBeginALot(std::string_view id)
{
    const std::string_view rest = id.substr(3);
    return rest.size() <= 8 && std::ranges::all_of(rest, [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
           });
}

/// An act as it would stand in the journal.
Entry asEntry(const ToRecord& act, const Author& author, std::int64_t seq)
{
    return {.seq = seq,
            .hash = {},
            .recordedAt = {},
            .happenedAt = act.happenedAt.value_or(JournalTime{}),
            .actor = author.id,
            .role = author.role,
            .workstation = {},
            .subjects = act.subjects,
            .reason = act.reason,
            .supersedes = act.supersedes,
            .act = act.act,
            .paper = act.paper};
}

/// What the journal holds, and what the acts before this one would add.
class Checks {
public:
    Checks(ReadSnapshot& snapshot, const Author& author, Instant now)
        : m_snapshot(snapshot), m_author(author), m_now(now)
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
        if (auto refusal = act.supersedes != 0 ? checkCorrection(act) : checkIds(act)) {
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
        return checkReferences(act);
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
        if (isAny<ItemAdded, ItemMoved, PackageChecked>(act.act) && state.isTest()) {
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
                  AerationStarted, ItemDistributed, ItemUsed>(act.act)) {
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
                                || prefix == "ar";
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

    std::optional<Refusal> checkCorrection(const ToRecord& act)
    {
        JournalReader reader(m_snapshot);
        const auto stored = reader.entry(act.supersedes);
        if (!stored) {
            return Refusal{.why = RefusalWhy::noSuchEntry, .seq = act.supersedes};
        }
        const Entry entry = understand(stored->bytes, stored->hash);
        if (act.subjects != entry.subjects) {
            return Refusal{.why = RefusalWhy::otherFact, .seq = act.supersedes};
        }
        if (std::holds_alternative<EntryAnnotated>(act.act)) {
            return std::nullopt;
        }
        if (auto refusal = checkReferences(act)) {
            return refusal;
        }
        const auto* const reserved = std::get_if<CycleReserved>(&act.act);
        const auto* const before = std::get_if<CycleReserved>(&entry.act);
        if (reserved != nullptr && before != nullptr && reserved->lot != before->lot) {
            // It stands on labels, and no other cycle may have it.
            return Refusal{.why = RefusalWhy::notCorrectable, .seq = act.supersedes};
        }
        if (entry.subjects.empty()) {
            return Refusal{.why = RefusalWhy::notCorrectable, .seq = act.supersedes};
        }
        return checkEffect(act, entry);
    }

    /// What the fold would make of the correction: one without effect is refused, with the reason.
    std::optional<Refusal> checkEffect(const ToRecord& act, const Entry& entry)
    {
        std::vector<Entry> entries = entriesAbout(m_snapshot, entry.subjects.front());
        const std::int64_t seq = JournalReader(m_snapshot).head().seq + 1;
        const Refusal notCurrent{.why = RefusalWhy::notCurrent,
                                 .seq = newestVersion(FactBook(entries), entry.seq)};
        entries.push_back(asEntry(act, m_author, seq));
        const FactBook book(entries);
        for (const Misfit& misfit : book.misfits()) {
            if (misfit.seq != seq) {
                continue;
            }
            switch (misfit.why) {
            case MisfitWhy::overtaken:
            case MisfitWhy::alreadyStruck: return notCurrent;
            case MisfitWhy::finalAct:
                return Refusal{.why = RefusalWhy::notCorrectable, .seq = entry.seq};
            case MisfitWhy::noRight: return Refusal{.why = RefusalWhy::secondPerson};
            case MisfitWhy::positiveStays: return Refusal{.why = RefusalWhy::positiveStays};
            case MisfitWhy::nothingThere:
            case MisfitWhy::otherFact:
                return Refusal{.why = RefusalWhy::otherFact, .seq = entry.seq};
            default: break;
            }
        }
        return std::nullopt;
    }

    /// The entry that a correction of that one has to name: its newest version, or what struck it.
    static std::int64_t newestVersion(const FactBook& book, std::int64_t seq)
    {
        for (const Fact& fact : book.facts()) {
            const bool isIn = std::ranges::any_of(
                fact.chain, [&](const Entry* each) { return each->seq == seq; });
            if (isIn) {
                return fact.stands() ? fact.chain.back()->seq : fact.struckBy->seq;
            }
        }
        return seq;
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
    std::map<std::string, CycleState> m_cycles;
    std::set<std::string> m_new;
};

/// Whether an act says or takes away who somebody is.
bool isOfStaff(const ToRecord& act)
{
    return std::ranges::any_of(act.subjects,
                               [](const std::string& id) { return prefixOf(id) == "st"; });
}

/// The staff as they are when the acts are recorded: one badge is one person, reads as nobody
/// else's id or name, and somebody can still sign as a supervisor.
std::optional<Refusal> checkStaff(ReadSnapshot& snapshot, std::span<const ToRecord> acts,
                                  const Author& author)
{
    if (std::ranges::none_of(acts, isOfStaff)) {
        return std::nullopt;
    }
    std::vector<Entry> entries = registerEntries(snapshot, "st");
    std::int64_t seq = JournalReader(snapshot).head().seq;
    for (const ToRecord& act : acts) {
        ++seq;
        if (isOfStaff(act)) {
            entries.push_back(asEntry(act, author, seq));
        }
    }
    const std::vector<Person> before = peopleOf(snapshot);
    const std::vector<Person> after = peopleFrom(entries);
    const auto hasPin = [&](const Person& person) {
        const auto known = personById(before, person.id);
        return known && known->hasPin;
    };
    for (const Person& person : after) {
        for (const Person& other : after) {
            const bool reads =
                !person.badge.empty() && person.id != other.id
                && (isSamePerson(person.badge, other.badge) || isSamePerson(person.badge, other.id)
                    || isSamePerson(person.badge, other.name));
            if (reads) {
                return Refusal{.why = RefusalWhy::badgeTaken, .subject = person.badge};
            }
        }
    }
    const bool someone = std::ranges::any_of(after, [&](const Person& person) {
        return person.role == Role::supervisor && person.active && hasPin(person);
    });
    return someone ? std::nullopt : std::optional(Refusal{.why = RefusalWhy::lastSupervisor});
}

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
