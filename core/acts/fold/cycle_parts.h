#pragma once

#include "core/acts/fold/cycle_fold.h"

#include <string>
#include <string_view>
#include <vector>

// The parts of foldCycle(), each in a source of its own.

namespace loadwarden {

/// The values of acts of which there can be only one.
template <class Act>
struct Said {
    struct Value {
        const Fact* fact;
        const Entry* entry;
        const Act* act;
    };
    std::vector<Value> values;

    [[nodiscard]] bool empty() const { return values.empty(); }
    [[nodiscard]] const Value& first() const { return values.front(); }

    /// Whether all are the same as far as `same` asks.
    template <class Same>
    [[nodiscard]] bool agree(Same same) const
    {
        for (const Value& value : values) {
            if (!same(*values.front().act, *value.act)) {
                return false;
            }
        }
        return true;
    }
};

/// All standing values of a kind about something. Without `unsignedToo` only those that somebody
/// signed who records; the others are misfits.
template <class Act>
[[nodiscard]] Said<Act> saidOf(Folding& folding, std::string_view id, bool own, bool unsignedToo)
{
    Said<Act> said;
    folding.each<Act>(id, own, [&](const Fact& fact) {
        if (!fact.stands()) {
            return;
        }
        for (const Entry* const entry : fact.counting) {
            if (unsignedToo || isSigned(actOf(*entry))) {
                said.values.push_back({&fact, entry, &std::get<Act>(entry->act)});
            } else {
                folding.misfit(*entry, MisfitWhy::unsignedFact);
            }
        }
    });
    return said;
}

/// The act of the first, of those that stand where there is one of least that role.
template <class Act>
[[nodiscard]] std::optional<::loadwarden::Act> firstAct(const Said<Act>& said,
                                                        Role least = Role::operating)
{
    for (const auto& value : said.values) {
        const ::loadwarden::Act act = actOf(*value.entry);
        if (isSigned(act) && act.role >= least) {
            return act;
        }
    }
    return said.empty() ? std::nullopt : std::optional(actOf(*said.first().entry));
}

void foldCourse(Folding& folding, CycleFold& into, bool own);
void foldSterilizersRecord(Folding& folding, CycleFold& into, bool own);
void foldItems(Folding& folding, CycleFold& into, bool own);
void foldIndicators(Folding& folding, CycleFold& into, bool own);
void foldTest(Folding& folding, CycleFold& into, bool own);
void foldFailures(Folding& folding, CycleFold& into, bool own);

} // namespace loadwarden
