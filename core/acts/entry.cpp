#include "core/acts/entry.h"

#include "core/acts/bodies/rules.h"
#include "core/acts/nfc.h"
#include "core/quantities/role_words.h"

#include <algorithm>
#include <array>
#include <span>
#include <type_traits>

namespace loadwarden {
namespace {

using body_format::isId;

ActFault fault(const Envelope& envelope, const std::string& what)
{
    return {"Entry " + std::to_string(envelope.seq) + " of the kind \"" + envelope.kind + "\" "
            + what + '.'};
}

/// How many of the ids have that prefix.
std::ptrdiff_t countOf(const std::vector<std::string>& ids, std::string_view prefix)
{
    return std::ranges::count_if(ids, [prefix](const auto& id) { return hasPrefix(id, prefix); });
}

/// Whether the subjects are what one alternative of acts.def asks for: "ld sp?".
bool meets(std::string_view wanted, const std::vector<std::string>& subjects)
{
    // Prefixes that must be there, as many as they are named.
    std::array<std::string_view, 4> asked;
    std::size_t count = 0;
    while (!wanted.empty()) {
        const std::size_t blank = wanted.find(' ');
        const std::string_view word = wanted.substr(0, blank);
        wanted = blank == std::string_view::npos ? "" : wanted.substr(blank + 1);
        const std::string_view prefix = word.substr(0, 2);
        if (word.ends_with('*')) {
            continue;
        }
        if (word.ends_with('?')) {
            if (countOf(subjects, prefix) > 1) {
                return false;
            }
            continue;
        }
        asked.at(count++) = prefix;
    }
    const std::span all(asked.data(), count);
    return std::ranges::all_of(all, [&](std::string_view prefix) {
        return countOf(subjects, prefix) == std::ranges::count(all, prefix);
    });
}

bool meetsAny(std::string_view alternatives, const std::vector<std::string>& subjects)
{
    while (true) {
        const std::size_t bar = alternatives.find('|');
        if (meets(alternatives.substr(0, bar), subjects)) {
            return true;
        }
        if (bar == std::string_view::npos) {
            return false;
        }
        alternatives = alternatives.substr(bar + 1);
    }
}

/// The ids that an act brings in or tells apart in its body and that must stand among its subjects.
std::vector<std::string_view> idsOf(const AnyAct& act)
{
    std::vector<std::string_view> ids;
    const auto addAll = [&ids](const std::vector<PlacedIndicator>& list) {
        for (const PlacedIndicator& each : list) {
            ids.emplace_back(each.id);
        }
    };
    if (const auto* added = std::get_if<ItemAdded>(&act)) {
        addAll(added->internals);
        if (added->external) {
            ids.emplace_back(added->external->id);
        }
    } else if (const auto* placed = std::get_if<PcdPlaced>(&act)) {
        addAll(placed->indicators);
        addAll(placed->vials);
    } else if (const auto* moved = std::get_if<ItemMoved>(&act)) {
        ids = {moved->from, moved->to};
    }
    return ids;
}

/// Whether evidence can state when an act happened and was recorded. Nothing is recorded at the
/// first moment of all: a review that saw nothing saw what there was up to that.
bool areStatable(Instant happened, Instant recorded)
{
    return happened >= firstMoment && happened <= lastMoment && recorded > firstMoment
           && recorded <= lastMoment;
}

bool isVoidOrNote(const AnyAct& act)
{
    return std::holds_alternative<EntryVoided>(act) || std::holds_alternative<EntryAnnotated>(act);
}

bool isReread(const AnyAct& act)
{
    return std::holds_alternative<ChemicalReread>(act)
           || std::holds_alternative<BiologicalReread>(act);
}

} // namespace

std::string_view Entry::subject(std::string_view prefix) const
{
    const auto found =
        std::ranges::find_if(subjects, [prefix](const auto& id) { return hasPrefix(id, prefix); });
    return found == subjects.end() ? std::string_view{} : *found;
}

bool Entry::isAbout(std::string_view id) const
{
    return std::ranges::find(subjects, id) != subjects.end();
}

std::variant<Entry, ActFault> readEntry(Envelope envelope, const Hash& hash)
{
    const auto role = valueOf(roleWords, envelope.role);
    if (!role && !envelope.role.empty()) {
        return fault(envelope, "names no role with \"" + envelope.role + '"');
    }
    if (envelope.actor.empty() != envelope.role.empty()) {
        return fault(envelope, "must name an actor and a role, or neither");
    }
    if (!envelope.actor.empty() && !body_format::aName.holds(envelope.actor)) {
        return fault(envelope, "must have an actor whose id is a name");
    }
    if (!std::ranges::all_of(envelope.subjects, isId)) {
        return fault(envelope, "has a subject that is no id");
    }
    if (!isNfc(envelope.reason)) {
        return fault(envelope, "has a reason that is not in normalization form C");
    }
    auto decoded = decodeBody(envelope.kind, envelope.version, envelope.body);
    if (auto* wrong = std::get_if<ActFault>(&decoded)) {
        return {std::move(*wrong)};
    }
    auto& body = std::get<ActBody>(decoded);
    if (!std::holds_alternative<NotUnderstood>(body.act)) {
        if (!areStatable(envelope.happenedAt.at, envelope.recordedAt.at)) {
            return fault(envelope, "must have happened and have been recorded in the years 2000 to "
                                   "2099");
        }
        if (!meetsAny(kindOf(body.act).subjects, envelope.subjects)) {
            return fault(envelope, "must have the subjects \""
                                       + std::string(kindOf(body.act).subjects) + '"');
        }
        for (const std::string_view id : idsOf(body.act)) {
            if (std::ranges::find(envelope.subjects, id) == envelope.subjects.end()) {
                return fault(envelope, "must have " + std::string(id) + " among its subjects");
            }
        }
        const bool corrects = envelope.supersedes != 0;
        if (!corrects && (isVoidOrNote(body.act) || isReread(body.act))) {
            return fault(envelope, "must name the entry that it is about");
        }
        if (corrects && envelope.reason.empty()) {
            return fault(envelope, "corrects another and must give a reason");
        }
        if (corrects && body.paper) {
            return fault(envelope, "corrects another and cannot be typed for somebody else");
        }
    }
    if (envelope.supersedes < 0 || envelope.supersedes >= envelope.seq) {
        return fault(envelope, "must name an entry before it");
    }
    return Entry{.seq = envelope.seq,
                 .hash = hash,
                 .recordedAt = envelope.recordedAt,
                 .happenedAt = envelope.happenedAt,
                 .happenedFrom = envelope.happenedFrom,
                 .actor = std::move(envelope.actor),
                 .role = role.value_or(Role::viewer),
                 .workstation = std::move(envelope.workstation),
                 .subjects = std::move(envelope.subjects),
                 .reason = std::move(envelope.reason),
                 .supersedes = envelope.supersedes,
                 .basedOn = envelope.basedOn,
                 .act = std::move(body.act),
                 .paper = std::move(body.paper)};
}

Envelope envelopeOf(const Entry& entry)
{
    const KindOfAct kind = kindOf(entry.act);
    Envelope envelope;
    envelope.seq = entry.seq;
    envelope.recordedAt = entry.recordedAt;
    envelope.happenedAt = entry.happenedAt;
    envelope.happenedFrom = entry.happenedFrom;
    envelope.actor = entry.actor;
    envelope.role = entry.actor.empty() ? "" : std::string(wordOf(roleWords, entry.role));
    envelope.workstation = entry.workstation;
    envelope.kind = std::string(kind.kind);
    envelope.version = kind.version;
    envelope.subjects = entry.subjects;
    envelope.reason = entry.reason;
    envelope.supersedes = entry.supersedes;
    envelope.basedOn = entry.basedOn;
    envelope.body = encodeBody({entry.act, entry.paper});
    return envelope;
}

} // namespace loadwarden
