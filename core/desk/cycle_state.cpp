#include "core/desk/cycle_state.h"

namespace loadwarden {

CycleState stateOfCycle(std::span<const Entry> entries, std::string_view cycle)
{
    const FactBook book(entries);
    CycleState state;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        for (const std::string& id : fact.origin->subjects) {
            state.mentions.insert(id);
        }
        if (!fact.stands()) {
            continue;
        }
        const Entry& entry = fact.current();
        if (const auto* const reserved = std::get_if<CycleReserved>(&entry.act)) {
            if (!state.reserved) {
                state.purpose = reserved->purpose;
                state.lot = reserved->lot;
                state.sterilizer = entry.subject("sz");
            }
            state.reserved = true;
        } else if (std::holds_alternative<CycleStarted>(entry.act)) {
            if (!state.started) {
                state.start = entry.happenedAt.at;
            }
            state.started = true;
        } else if (std::holds_alternative<CycleEnded>(entry.act)) {
            if (!state.ended) {
                state.end = entry.happenedAt.at;
            }
            state.ended = true;
        }
    }
    return state;
}

} // namespace loadwarden
