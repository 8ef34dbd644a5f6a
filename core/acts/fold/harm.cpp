#include "core/acts/fold/harm.h"

#include "core/acts/fold/seen.h"

#include <type_traits>

namespace loadwarden {
namespace {

template <class Act, class... Acts>
constexpr bool isOneOf = (std::is_same_v<Act, Acts> || ...);

bool hasNo(const PackageChecked& check)
{
    const auto no = [](const std::optional<bool>& flag) { return flag && !*flag; };
    return no(check.cooled) || no(check.dry) || no(check.intact) || no(check.sealed)
           || no(check.labelAgrees);
}

bool isVial(const Entry& entry)
{
    return !entry.subject("bv").empty();
}

} // namespace

std::optional<Seen> seenIn(const AnyAct& act)
{
    return std::visit(
        []<class Act>(const Act& read) -> std::optional<Seen> {
            if constexpr (isOneOf<Act, ChemicalRead, ChemicalReread, BiologicalRead,
                                  BiologicalReread>) {
                return read.seen;
            } else {
                return std::nullopt;
            }
        },
        act);
}

bool isChemical(const AnyAct& act)
{
    return std::visit(
        []<class Act>(const Act&) {
            return isOneOf<Act, ChemicalRead, ChemicalReread, ChemicalLost, ChemicalUnsettled>;
        },
        act);
}

SeenRank rankOf(Seen seen, bool ofControl)
{
    switch (seen) {
    case Seen::frontInAcceptZone:
    case Seen::endColourReached:
    case Seen::uniformComplete: return SeenRank::good;
    case Seen::growth: return ofControl ? SeenRank::good : SeenRank::bad;
    case Seen::noGrowth: return ofControl ? SeenRank::bad : SeenRank::good;
    case Seen::unclear: return SeenRank::unclear;
    case Seen::frontOnBoundary:
    case Seen::frontShortOfBoundary:
    case Seen::endColourPartly:
    case Seen::unchanged:
    case Seen::uniformIncomplete:
    case Seen::notUniform:
    case Seen::absent: break;
    }
    return SeenRank::bad;
}

SeenRank rankOf(const Entry& entry, Seen seen)
{
    return rankOf(seen, !entry.subject("bc").empty() && !isVial(entry));
}

bool mayHarm(const Entry& entry)
{
    return std::visit(
        [&entry]<class Act>(const Act& act) {
            if constexpr (isOneOf<Act, PhysicalVerified, ItemConfirmed, BiologicalActivated,
                                  SterilizerReturned, IncidentClosed, IncidentFound, ItemRemoved,
                                  AerationStarted, AerationEnded, TestVoidExplained,
                                  IncubatorInRange, CycleUnloaded, ItemDistributed, ItemUsed,
                                  ItemReturned, HistoryImported, EntryAnnotated, QuestionLogged,
                                  ReadingCheckTaken, DirectionsRecorded, LotDescribed>) {
                return false;
            } else if constexpr (isOneOf<Act, ChemicalRead, ChemicalReread, BiologicalRead,
                                         BiologicalReread>) {
                return rankOf(entry, act.seen) != SeenRank::good;
            } else if constexpr (std::is_same_v<Act, PrintoutAnswered>) {
                return act.answer != PrintoutAnswer::recordRight;
            } else if constexpr (std::is_same_v<Act, ReviewRecorded>) {
                return act.answer != ReviewAnswer::isolated;
            } else if constexpr (std::is_same_v<Act, FailureResolved>) {
                return !act.causeKnown;
            } else if constexpr (std::is_same_v<Act, TestPhysicalJudged>) {
                return !act.good;
            } else if constexpr (std::is_same_v<Act, PackageChecked>) {
                return hasNo(act);
            } else if constexpr (std::is_same_v<Act, ImmediateUseStated>) {
                return act.forStorage.value_or(false);
            } else if constexpr (std::is_same_v<Act, ProcessIndicatorRead>) {
                return isVial(entry) == (act.seen == ProcessIndicator::unchanged);
            } else {
                return true;
            }
        },
        entry.act);
}

bool harmsAtLeast(const Entry& to, const Entry& from)
{
    const std::optional<Seen> now = seenIn(to.act);
    const std::optional<Seen> before = seenIn(from.act);
    if (now && before) {
        // A control's "no growth" counts from its readout only, so that its time may soften it.
        const bool sameTime =
            to.happenedAt.at == from.happenedAt.at || isVial(from) || from.subject("bc").empty();
        return sameTime && rankOf(to, *now) >= rankOf(from, *before);
    }
    if (const auto* check = std::get_if<PackageChecked>(&to.act)) {
        const auto& old = std::get<PackageChecked>(from.act);
        const auto keepsNo = [](const std::optional<bool>& b, const std::optional<bool>& a) {
            return !a || *a || (b && !*b);
        };
        return keepsNo(check->cooled, old.cooled) && keepsNo(check->dry, old.dry)
               && keepsNo(check->intact, old.intact) && keepsNo(check->sealed, old.sealed)
               && keepsNo(check->labelAgrees, old.labelAgrees);
    }
    return to.happenedAt.at == from.happenedAt.at
           && encodeBody({to.act, {}}) == encodeBody({from.act, {}});
}

bool makesPositive(const Entry& entry)
{
    if (!isVial(entry)) {
        return false;
    }
    const std::optional<Seen> seen = seenIn(entry.act);
    return (seen && *seen != Seen::noGrowth)
           || std::holds_alternative<BiologicalUnsettled>(entry.act);
}

bool isFinal(const AnyAct& act)
{
    return std::holds_alternative<JournalOpened>(act) || std::holds_alternative<StaffPinSet>(act)
           || std::holds_alternative<SealKeyRecorded>(act)
           || std::holds_alternative<DispositionSigned>(act)
           || std::holds_alternative<EmergencyReleased>(act);
}

} // namespace loadwarden
