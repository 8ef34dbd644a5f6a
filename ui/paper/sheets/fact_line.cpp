#include "ui/paper/sheets/fact_line.h"

#include "core/words/say_any_act.h"
#include "ui/paper/sheets/house.h"

#include <algorithm>

namespace loadwarden::paper {
namespace {

bool counts(const Fact& fact, const Entry& version)
{
    return fact.stands() && std::ranges::find(fact.counting, &version) != fact.counting.end();
}

/// What a correction did, with a place for who did it and why.
QString correctionText(const Fact& fact, const Entry& correction)
{
    if (std::holds_alternative<EntryVoided>(correction.act)) {
        return fact.struckBy == &correction ? tr("Voided by %1: %2")
                                            : tr("Voiding without effect, by %1: %2");
    }
    const bool originCounts = std::ranges::find(fact.counting, fact.origin) != fact.counting.end();
    return originCounts && fact.stands() ? tr("Counts beside it, said by %1: %2")
                                         : tr("Amended by %1: %2");
}

} // namespace

FactLine lineOf(const Fact& fact, const Names& names, const HouseStyle& style)
{
    const auto nameOf = [&names](std::string_view id) { return names.of(id); };
    FactLine line;
    line.who = plain(whoText(*fact.origin, names, style));
    bool anyCounts = false;
    for (const Entry* const version : fact.chain) {
        if (version != fact.origin) {
            line.who.push_back(
                {u'\n'
                     + correctionText(fact, *version)
                           .arg(whoText(*version, names, style), text(version->reason)),
                 Face::plain});
        }
        if (std::holds_alternative<EntryVoided>(version->act)) {
            continue;
        }
        const ActSaid said = say(version->act, nameOf, style);
        const bool isCounting = counts(fact, *version);
        anyCounts = anyCounts || isCounting;
        if (line.what.empty()) {
            line.what = plain(text(said.what));
        }
        if (!said.value.empty()) {
            if (!line.value.empty()) {
                line.value.push_back({QStringLiteral("  "), Face::plain});
            }
            line.value.push_back({text(said.value), isCounting ? Face::plain : Face::struck});
        }
    }
    if (!anyCounts) {
        line.what.front().face = Face::struck;
    }
    return line;
}

} // namespace loadwarden::paper
