#include "core/desk/cycle_record.h"

#include "core/desk/journal_entries.h"
#include "core/store/finder.h"

#include <algorithm>
#include <iterator>

namespace loadwarden {

Head headAt(ReadSnapshot& snapshot, std::int64_t seq)
{
    const auto stored = JournalReader(snapshot).entry(seq);
    return stored ? Head{stored->seq, stored->hash} : Head{};
}

std::optional<CycleRecord> recordOfCycle(ReadSnapshot& snapshot, EntryCache& cache,
                                         std::string_view cycle, Instant now, std::int64_t upTo)
{
    auto view = viewCycle(snapshot, cache, cycle, now, upTo);
    if (!view) {
        return std::nullopt;
    }
    CycleRecord record{.view = *std::move(view),
                       .entries = entriesAbout(snapshot, std::string(cycle)),
                       .names = Names(snapshot),
                       .head = {}};
    for (const Control& control : record.view.folded.record.controls) {
        std::ranges::copy(entriesAbout(snapshot, control.id), std::back_inserter(record.entries));
    }
    // What was packed into another load and moved here was said to be in that one.
    for (const std::string& item : record.view.folded.itemIds) {
        std::ranges::copy_if(entriesAbout(snapshot, item), std::back_inserter(record.entries),
                             [](const Entry& entry) {
                                 return std::holds_alternative<ItemAdded>(entry.act);
                             });
    }
    std::ranges::sort(record.entries, {}, &Entry::seq);
    const auto doubled = std::ranges::unique(record.entries, {}, &Entry::seq);
    record.entries.erase(doubled.begin(), doubled.end());
    std::erase_if(record.entries,
                  [&](const Entry& entry) { return entry.seq > record.view.seen; });
    Finder finder(snapshot);
    for (const Entry& entry : record.entries) {
        for (const std::string& id : entry.subjects) {
            if (const auto found = hasPrefix(id, "ld") ? finder.cycle(id) : std::nullopt) {
                record.names.set(id, found->lot);
            }
        }
    }
    record.head = headAt(snapshot, record.view.seen);
    return record;
}

} // namespace loadwarden
