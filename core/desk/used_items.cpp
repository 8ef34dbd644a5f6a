#include "core/desk/used_items.h"

#include "core/desk/cycle_state.h"
#include "core/desk/journal_entries.h"

#include <algorithm>

namespace loadwarden {

std::vector<UnreleasedUse> unreleasedUses(ReadSnapshot& snapshot, const std::string& cycle)
{
    const std::vector<Entry> entries = entriesAbout(snapshot, cycle);
    const auto isUse = [](const Entry& entry) {
        return std::holds_alternative<ItemUsed>(entry.act);
    };
    if (std::ranges::none_of(entries, isUse)) {
        return {};
    }
    const CycleState state = stateOfCycle(entries, cycle);
    const FactBook book(entries);
    std::map<std::string, std::string, std::less<>> labels;
    std::vector<UnreleasedUse> uses;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        if (!fact.stands()) {
            continue;
        }
        const Entry& entry = fact.current();
        const std::string item(entry.subject("it"));
        if (const auto* const added = std::get_if<ItemAdded>(&entry.act)) {
            labels[item] = added->label;
        } else if (const auto* const used = std::get_if<ItemUsed>(&entry.act)) {
            const auto released = state.released.find(item);
            if (released == state.released.end() || !released->second) {
                uses.push_back({.item = item,
                                .label = labels.contains(item) ? labels[item] : item,
                                .lot = state.lot,
                                .caseReference = used->caseReference,
                                .seq = entry.seq});
            }
        }
    }
    return uses;
}

} // namespace loadwarden
