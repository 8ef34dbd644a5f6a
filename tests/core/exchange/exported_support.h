#pragma once

#include "tests/core/acts/journal_support.h"

#include <nlohmann/json.hpp>

#include <sstream>
#include <string>
#include <string_view>
#include <vector>

namespace loadwarden::tests {

/// How an act is entered.
struct Entering {
    Person who = operatorA;
    Instant happened = at(9, 0);
    Instant recorded = at(9, 0);
    std::vector<std::string> subjects;
    std::int64_t supersedes = 0;
};

/// Adds an act by the JSON of its body; false, and nothing is added, where an entry is refused.
bool enter(Journal& journal, const std::string& kind, const nlohmann::json& body,
           const Entering& how);

/// What an act of that kind and body has for subjects: ids of the body, then one of some that
/// `idOf` gives for a prefix and a number. Of what may be about a vial or a control, `ofControl`.
template <class IdOf>
[[nodiscard]] std::vector<std::string>
subjectsFor(const std::string& kind, const nlohmann::json& body, bool ofControl, IdOf idOf);

/// The ids that a body has at any place, with that prefix.
[[nodiscard]] std::vector<std::string> idsIn(const nlohmann::json& body, std::string_view prefix);

/// What keeps the evidence of some of a journal's cycles from coming back as it was folded when it
/// is written and read; empty: nothing does. Of a test that has not started it must be said that it
/// has no start.
[[nodiscard]] std::string lostInExport(const Journal& journal,
                                       const std::vector<std::string>& cycles);

template <class IdOf>
std::vector<std::string> subjectsFor(const std::string& kind, const nlohmann::json& body,
                                     bool ofControl, IdOf idOf)
{
    std::string wanted(findKind(kind)->subjects);
    if (const std::size_t bar = wanted.find('|'); bar != std::string::npos) {
        wanted = ofControl ? wanted.substr(bar + 1) : wanted.substr(0, bar);
    }
    std::vector<std::string> subjects;
    const auto add = [&subjects](const std::string& id) {
        if (std::ranges::find(subjects, id) == subjects.end()) {
            subjects.push_back(id);
        }
    };
    std::istringstream words(wanted);
    int number = 0;
    for (std::string word; words >> word; ++number) {
        const std::string prefix = word.substr(0, 2);
        if (word.ends_with('*')) {
            std::ranges::for_each(idsIn(body, prefix), add);
        } else if (kind == "item.moved" && prefix == "ld") {
            add(body.at("from"));
            add(body.at("to"));
        } else {
            add(idOf(prefix, number));
        }
    }
    return subjects;
}

} // namespace loadwarden::tests
