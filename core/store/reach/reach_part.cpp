#include "core/store/reach/reach_part.h"

#include "core/store/reach/named_ids.h"

#include <algorithm>

namespace loadwarden {
namespace {

bool isReread(const AnyAct& act)
{
    return std::holds_alternative<ChemicalReread>(act)
           || std::holds_alternative<BiologicalReread>(act);
}

/// Whether an entry may be another version of the one that it names, so that it says nothing true
/// without that.
bool isAmendment(const Entry& entry)
{
    return entry.supersedes != 0 && !isReread(entry.act)
           && !std::holds_alternative<EntryVoided>(entry.act)
           && !std::holds_alternative<EntryAnnotated>(entry.act);
}

} // namespace

bool isThing(std::string_view id)
{
    return hasPrefix(id, "it") || hasPrefix(id, "ci") || hasPrefix(id, "bv");
}

ReachPart reachPart(SharedEntries entries)
{
    ReachPart part;
    part.entries = std::move(entries);
    std::ranges::sort(part.entries, {}, [](const auto& each) { return each->seq; });
    const auto name = [&part](const std::string& id) {
        if (std::ranges::find(part.named, id) == part.named.end()) {
            part.named.push_back(id);
        }
    };
    for (const auto& entry : part.entries) {
        forEachNamed(*entry, name);
        forEachVial(*entry, [&part](const PlacedIndicator& vial) {
            if (!vial.lot.empty()) {
                part.vials.push_back(vial);
            }
        });
        if (isAmendment(*entry)) {
            part.amends.push_back(entry->supersedes);
        }
        if (std::holds_alternative<BiologicalIncubated>(entry->act)) {
            part.incubated.emplace_back(entry->subject("bv"), entry->happenedAt.at.ms);
        }
        if (std::ranges::any_of(entry->subjects, isThing)) {
            std::ranges::copy_if(entry->subjects, std::inserter(part.cycles, part.cycles.end()),
                                 [](const auto& id) { return hasPrefix(id, "ld"); });
        }
    }
    return part;
}

} // namespace loadwarden
