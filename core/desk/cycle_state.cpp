#include "core/desk/cycle_state.h"

namespace loadwarden {

CycleState stateOfCycle(std::span<const Entry> entries, std::string_view cycle)
{
    const FactBook book(entries);
    CycleState state;
    ClockSource clock = ClockSource::facility;
    std::map<std::string, std::vector<std::string>, std::less<>> inItem;
    for (const std::uint32_t index : book.about(cycle)) {
        const Fact& fact = book.facts()[index];
        const Entry& entry = fact.current();
        const std::string item(entry.subject("it"));
        const auto* const moved = std::get_if<ItemMoved>(&entry.act);
        const bool left = std::holds_alternative<ItemRemoved>(entry.act)
                          || (moved != nullptr && moved->from == cycle);
        if (left && fact.stands() && !state.started) {
            state.mentions.erase(item);
            state.labels.erase(item);
            for (const std::string& id : inItem[item]) {
                state.mentions.erase(id);
            }
            continue;
        }
        if (!std::holds_alternative<EntryAnnotated>(entry.act)) {
            state.mentions.insert(fact.origin->subjects.begin(), fact.origin->subjects.end());
        }
        if (!fact.stands()) {
            continue;
        }
        if (const auto* const added = std::get_if<ItemAdded>(&entry.act)) {
            inItem[item] = entry.subjects;
            state.labels[item] = added->label;
        }
        if (const auto* const reserved = std::get_if<CycleReserved>(&entry.act)) {
            if (!state.reserved) {
                state.purpose = reserved->purpose;
                state.lot = reserved->lot;
                state.sterilizer = entry.subject("sz");
            }
            state.reserved = true;
        } else if (const auto* const started = std::get_if<CycleStarted>(&entry.act)) {
            if (!state.started) {
                clock = started->clock;
                state.start =
                    clock == ClockSource::facility ? started->shown.at : entry.happenedAt.at;
            }
            state.started = true;
        } else if (const auto* const ended = std::get_if<CycleEnded>(&entry.act)) {
            if (!state.ended) {
                state.end = clock == ClockSource::facility ? ended->shown.at : entry.happenedAt.at;
            }
            state.ended = true;
        } else if (const auto* const disposed = std::get_if<DispositionSigned>(&entry.act)) {
            for (const SignedItem& each : disposed->items) {
                state.released[each.item] = each.meaning == Verdict::release;
            }
        } else if (std::holds_alternative<EmergencyReleased>(entry.act)) {
            state.released[item] = true;
        }
    }
    return state;
}

JournalTime endAsTyped(const JournalTime& typed, const CycleState& state)
{
    const bool isInItsMinute =
        state.start && typed.at < *state.start && minuteOf(typed.at) == minuteOf(*state.start);
    return isInItsMinute ? JournalTime{*state.start, typed.offsetMinutes} : typed;
}

} // namespace loadwarden
