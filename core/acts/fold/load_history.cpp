#include "core/acts/fold/load_history.h"

#include <algorithm>
#include <map>
#include <set>

namespace loadwarden {
namespace {

/// The lines of a fact's versions and corrections.
void addLines(const Fact& fact, std::map<std::int64_t, HistoryLine>& lines)
{
    for (const Entry* const entry : fact.chain) {
        HistoryLine line{.seq = entry->seq, .state = LineState::stands, .by = 0};
        const bool counts = std::ranges::find(fact.counting, entry) != fact.counting.end();
        if (std::holds_alternative<EntryVoided>(entry->act)) {
            line.state = fact.struckBy == entry ? LineState::stands : LineState::withoutEffect;
        } else if (!fact.stands()) {
            line = {entry->seq, LineState::struck, fact.struckBy->seq};
        } else if (!counts) {
            line = {entry->seq, LineState::amended, fact.current().seq};
        } else if (entry != &fact.current()) {
            line.state = LineState::beside;
        }
        lines[entry->seq] = line;
    }
}

} // namespace

std::vector<HistoryLine> historyOf(const Folding& folding, std::string_view cycle)
{
    const FactBook& book = folding.book();
    std::map<std::int64_t, HistoryLine> lines;
    for (const std::uint32_t index : book.about(cycle)) {
        addLines(book.facts()[index], lines);
    }
    for (const Entry* const each : book.entries()) {
        const Entry& entry = *each;
        if (!entry.isAbout(cycle)) {
            continue;
        }
        if (std::holds_alternative<NotUnderstood>(entry.act)) {
            lines[entry.seq] = {entry.seq, LineState::notUnderstood, 0};
        } else if (!lines.contains(entry.seq)) {
            // A voiding of nothing.
            lines[entry.seq] = {entry.seq, LineState::withoutEffect, 0};
        }
    }
    std::vector<HistoryLine> history;
    for (const auto& [seq, line] : lines) {
        history.push_back(line);
    }
    return history;
}

std::vector<Misfit> misfitsAbout(const Folding& folding, std::string_view cycle)
{
    const FactBook& book = folding.book();
    if (book.misfits().empty() && folding.misfits().empty()) {
        return {}; // as nearly always
    }
    std::set<std::int64_t> concerned;
    std::set<std::string_view> subjects{cycle};
    for (const Fact& fact : book.facts()) {
        if (folding.isTaken(fact)) {
            for (const Entry* const entry : fact.chain) {
                concerned.insert(entry->seq);
                subjects.insert(entry->subjects.begin(), entry->subjects.end());
            }
        }
    }
    for (const Entry* const each : book.entries()) {
        const Entry& entry = *each;
        // What is not understood may be about anything of the evidence.
        const bool understood = !std::holds_alternative<NotUnderstood>(entry.act);
        if (entry.isAbout(cycle)
            || (!understood && std::ranges::any_of(entry.subjects, [&](const std::string& id) {
                   return subjects.contains(id);
               }))) {
            concerned.insert(entry.seq);
        }
    }
    std::set<Misfit> misfits;
    for (const auto* const list : {&book.misfits(), &folding.misfits()}) {
        for (const Misfit& each : *list) {
            if (concerned.contains(each.seq)) {
                misfits.insert(each);
            }
        }
    }
    return {misfits.begin(), misfits.end()};
}

} // namespace loadwarden
