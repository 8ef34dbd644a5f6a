#include "core/store/reach/named_ids.h"

#include <algorithm>
#include <array>

namespace loadwarden {

void forEachNamed(const Entry& entry, const std::function<void(const std::string&)>& visit)
{
    constexpr std::array<std::string_view, 6> registers{"sp", "pr", "pl", "pk", "dv", "in"};
    const auto say = [&visit](const std::string& id) {
        if (!id.empty()) {
            visit(id);
        }
    };
    const auto placed = [&say](const PlacedIndicator& indicator) {
        say(indicator.product);
        say(indicator.lot);
    };
    for (const std::string& id : entry.subjects) {
        if (std::ranges::any_of(registers, [&](auto prefix) { return hasPrefix(id, prefix); })) {
            visit(id);
        }
    }
    if (const auto* const added = std::get_if<ItemAdded>(&entry.act)) {
        say(added->packaging);
        std::ranges::for_each(added->devices, say);
        std::ranges::for_each(added->internals, placed);
        if (added->external) {
            placed(*added->external);
        }
    } else if (const auto* const pcd = std::get_if<PcdPlaced>(&entry.act)) {
        std::ranges::for_each(pcd->indicators, placed);
        std::ranges::for_each(pcd->vials, placed);
    } else if (const auto* const sheet = std::get_if<SheetPlaced>(&entry.act)) {
        say(sheet->product);
        say(sheet->lot);
    } else if (const auto* const control = std::get_if<ControlPrepared>(&entry.act)) {
        say(control->product);
        say(control->lot);
    }
}

void forEachVial(const Entry& entry, const std::function<void(const PlacedIndicator&)>& visit)
{
    if (const auto* const pcd = std::get_if<PcdPlaced>(&entry.act)) {
        std::ranges::for_each(pcd->vials, visit);
    }
}

} // namespace loadwarden
