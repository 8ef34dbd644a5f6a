#include "tests/core/exchange/bodies_support.h"
#include "tests/core/exchange/exported_support.h"

#include <rapidcheck/gtest.h>

#include <map>

// Journals of any acts that the codec takes, corrections among them: what is folded of them comes
// back as it was when it is written as evidence and read.

namespace loadwarden::tests {
namespace {

template <class List>
const auto& pick(const List& list)
{
    return list[*rc::gen::inRange<std::size_t>(0, list.size())];
}

bool oneIn(int many)
{
    return *rc::gen::inRange(0, many) == 0;
}

const std::vector<std::string>& idsWith(const std::string& prefix)
{
    static std::map<std::string, std::vector<std::string>> known;
    std::vector<std::string>& ids = known[prefix];
    if (ids.empty()) {
        ids = {prefix + "-1", prefix + "-1", prefix + "-2", prefix + "-3", longestId(prefix)};
        if (prefix == "ld") {
            ids.emplace_back("ld-bd");
        }
    }
    return ids;
}

/// Variants of a frozen body, made once.
const std::vector<nlohmann::json>& variantsOf(const std::string& kind, std::size_t which,
                                              const nlohmann::json::json_pointer& place)
{
    static std::map<std::string, std::vector<nlohmann::json>> known;
    const auto [found, isNew] =
        known.try_emplace(kind + '#' + std::to_string(which) + place.to_string());
    if (isNew) {
        found->second = variantsAt(kind, frozenBodies(kind)[which], place);
    }
    return found->second;
}

/// A frozen body with some members as in its variants, and other ids.
nlohmann::json anyBody(const std::string& kind)
{
    const std::vector<nlohmann::json>& bodies = frozenBodies(kind);
    const auto which = *rc::gen::inRange<std::size_t>(0, bodies.size());
    nlohmann::json body = bodies[which];
    const auto places = placesIn(body);
    const auto takeIfTaken = [&](nlohmann::json changed) {
        if (isTaken(kind, changed)) {
            body = std::move(changed);
        }
    };
    for (int i = *rc::gen::inRange(0, 4); i > 0 && !places.empty(); --i) {
        const auto& place = pick(places);
        const auto& variants = variantsOf(kind, which, place);
        if (variants.empty()) {
            continue;
        }
        // From a variant this member alone, which may go with what is changed already.
        const nlohmann::json& variant = pick(variants);
        nlohmann::json changed = body;
        if (variant.contains(place) && changed.contains(place)) {
            changed.at(place) = variant.at(place);
        } else {
            changed = variant;
        }
        takeIfTaken(std::move(changed));
    }
    for (const auto& place : placesIn(body)) {
        const nlohmann::json& value = body.at(place);
        if (value.is_string() && value.get<std::string>().find('-') == 2 && oneIn(2)) {
            nlohmann::json changed = body;
            changed.at(place) = pick(idsWith(value.get<std::string>().substr(0, 2)));
            takeIfTaken(std::move(changed));
        }
    }
    if (oneIn(8)) {
        nlohmann::json changed = body;
        changed["paper"] = {{"by", pick(idsWith("st"))}, {"role", "lead"}};
        takeIfTaken(std::move(changed));
    }
    return body;
}

Instant anyMoment(Instant least)
{
    const Instant usual = at(*rc::gen::inRange(4, 20), *rc::gen::inRange(0, 60));
    return *rc::gen::element(usual, usual, usual, usual, least, lastMoment);
}

/// Whether it was taken: what is drawn need not belong together.
bool addAny(Journal& journal)
{
    static const std::vector<Person> people{
        operatorA,   operatorB, leadC,   supervisorE,
        supervisorF, viewerG,   program, {longestId("st"), Role::supervisor}};
    const std::string& kind = pick(frozenKinds());
    const nlohmann::json body = anyBody(kind);
    const auto idOf = [](const std::string& prefix, int) { return pick(idsWith(prefix)); };
    Entering how{.who = pick(people),
                 .happened = anyMoment(firstMoment),
                 .recorded = anyMoment(firstMoment + Duration::milliseconds(1)),
                 .subjects = subjectsFor(kind, body, oneIn(2), idOf)};
    if (oneIn(6)) {
        const std::string& more =
            pick(idsWith(*rc::gen::element<std::string>("ci", "bv", "bc", "it", "ld", "sz", "in")));
        if (std::ranges::find(how.subjects, more) == how.subjects.end()) {
            how.subjects.push_back(more); // an entry names nothing twice
        }
    }
    const bool mustCorrect = kind.ends_with("reread") || kind.starts_with("entry.");
    if (mustCorrect || oneIn(4)) {
        std::vector<const Entry*> old;
        for (const Entry& entry : journal.entries()) {
            if (mustCorrect || kindOf(entry.act).kind == kind) {
                old.push_back(&entry);
            }
        }
        if (!old.empty()) {
            const Entry& corrected = *pick(old);
            how.supersedes = corrected.seq;
            how.subjects = corrected.subjects;
        }
    }
    return enter(journal, kind, body, how);
}

Journal anyJournal(int& taken)
{
    Journal journal = morning();
    const auto addSome = [&](int most) {
        for (int i = *rc::gen::inRange(0, most); i > 0; --i) {
            taken += addAny(journal) ? 1 : 0;
        }
    };
    addSome(20);
    addLoaded(journal, Implant::yes);
    addSome(20);
    addDone(journal);
    addBiological(journal);
    addSome(40);
    return journal;
}

RC_GTEST_PROP(ExportedProperties, AnyJournalsEvidenceComesBackAsItWasFolded, ())
{
    int taken = 0;
    const Journal journal = anyJournal(taken);
    RC_CLASSIFY(taken > 20, "more than 20 acts");
    std::vector<std::string> cycles = idsWith("ld");
    std::ranges::sort(cycles);
    cycles.erase(std::unique(cycles.begin(), cycles.end()), cycles.end());
    RC_ASSERT(lostInExport(journal, cycles) == "");
}

} // namespace
} // namespace loadwarden::tests
