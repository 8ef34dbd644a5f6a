#include "core/desk/cycle_record.h"

#include "core/desk/journal_entries.h"
#include "core/store/finder.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>

namespace loadwarden {
namespace {

/// Whether a control stands beside a vial closely enough to be shown with it: of its product, lot
/// and incubator, or for this load. Which of them counts is for the decision to say.
bool isBeside(const Control& control, const Vial& vial, std::string_view lot)
{
    if (!control.forLoad.empty() && control.forLoad == lot) {
        return true;
    }
    return control.product == vial.product && control.lot == vial.lot
           && control.incubator == vial.incubator && control.incubationStart
           && vial.incubationStart;
}

/// The controls to show with a vial: the one put in nearest to it in time, and of the others of a
/// day before and after it those that did not simply grow.
void appendBeside(std::vector<std::string>& ids, const EvidenceRecord& record, const Vial& vial,
                  std::string_view lot)
{
    constexpr Duration day = Duration::hours(24);
    const auto apart = [&vial](const Control& control) {
        return control.incubationStart && vial.incubationStart
                   ? Duration{std::abs((*control.incubationStart - *vial.incubationStart).ms)}
                   : Duration{};
    };
    const Control* nearest = nullptr;
    for (const Control& control : record.controls) {
        if (!isBeside(control, vial, lot)) {
            continue;
        }
        const bool grew = !control.readings.empty()
                          && std::ranges::all_of(control.readings, [](const auto& reading) {
                                 return reading.seen == Seen::growth;
                             });
        if (!grew && apart(control) <= day) {
            ids.push_back(control.id);
        }
        if (nearest == nullptr || apart(control) < apart(*nearest)) {
            nearest = &control;
        }
    }
    if (nearest != nullptr) {
        ids.push_back(nearest->id);
    }
}

std::vector<std::string> controlsBeside(const CycleView& view)
{
    std::vector<std::string> ids;
    const EvidenceRecord& record = view.folded.record;
    if (view.isTest()) {
        for (const Vial& vial : record.test->vials) {
            appendBeside(ids, record, vial, view.lot());
        }
        return ids;
    }
    for (const ProcessChallengeDevice& pcd : record.load.pcds) {
        for (const Vial& vial : pcd.vials) {
            appendBeside(ids, record, vial, view.lot());
        }
    }
    return ids;
}

} // namespace

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
    for (const std::string& control : controlsBeside(record.view)) {
        std::ranges::copy(entriesAbout(snapshot, control), std::back_inserter(record.entries));
    }
    // What was packed into another load and moved here was said to be in that one.
    for (const std::string& item : record.view.folded.itemIds) {
        std::ranges::copy_if(
            entriesAbout(snapshot, item), std::back_inserter(record.entries),
            [](const Entry& entry) { return std::holds_alternative<ItemAdded>(entry.act); });
    }
    std::ranges::sort(record.entries, {}, &Entry::seq);
    const auto doubled = std::ranges::unique(record.entries, {}, &Entry::seq);
    record.entries.erase(doubled.begin(), doubled.end());
    std::erase_if(record.entries, [&](const Entry& entry) { return entry.seq > record.view.seen; });
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
