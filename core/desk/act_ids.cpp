#include "core/desk/act_ids.h"

#include <algorithm>
#include <array>

namespace loadwarden {
namespace {

/// Prefixes of what an act may bring in by naming it first; everything else must be there.
constexpr std::array<std::string_view, 10> registers = {"fa", "st", "po", "sz", "sp",
                                                        "pr", "pl", "pk", "dv", "in"};

} // namespace

bool mayBringIn(const ToRecord& act, std::string_view id)
{
    const std::string_view prefix = prefixOf(id);
    const bool isFirst = !act.subjects.empty() && act.subjects.front() == id;
    if (isAny<FacilityRecorded, StaffRecorded, PolicyRecorded, SterilizerRecorded,
              SpecificationRecorded, ProductRecorded, ProductLotRecorded, PackagingRecorded,
              DeviceRecorded, IncubatorRecorded>(act.act)) {
        return isFirst && std::ranges::find(registers, prefix) != registers.end();
    }
    if (std::holds_alternative<CycleReserved>(act.act)) {
        return prefix == "ld";
    }
    if (std::holds_alternative<ItemAdded>(act.act)) {
        return prefix == "it" || prefix == "ci";
    }
    if (std::holds_alternative<PcdPlaced>(act.act)) {
        return prefix == "pd" || prefix == "ci" || prefix == "bv";
    }
    if (std::holds_alternative<SheetPlaced>(act.act)) {
        return prefix == "ci";
    }
    if (std::holds_alternative<ControlPrepared>(act.act)) {
        return prefix == "bc";
    }
    if (std::holds_alternative<AerationStarted>(act.act)) {
        return prefix == "ar";
    }
    if (std::holds_alternative<TraceRead>(act.act)) {
        return prefix == "tr";
    }
    if (std::holds_alternative<IncidentOpened>(act.act)) {
        return prefix == "ic";
    }
    if (isAny<QuestionLogged, ReadingCheckTaken, ItemReported>(act.act)) {
        return isFirst && (prefix == "qu" || prefix == "rc");
    }
    return false;
}

bool bringsInOnlyNew(const ToRecord& act, std::string_view id)
{
    const std::string_view prefix = prefixOf(id);
    return (isAny<CycleReserved>(act.act) && prefix == "ld")
           || (isAny<PcdPlaced>(act.act) && prefix != "ld")
           || (isAny<ItemAdded, SheetPlaced>(act.act) && prefix == "ci")
           || isAny<ControlPrepared>(act.act) || (isAny<AerationStarted>(act.act) && prefix == "ar")
           || (isAny<TraceRead>(act.act) && prefix == "tr")
           || (isAny<IncidentOpened>(act.act) && prefix == "ic")
           || isAny<QuestionLogged, ReadingCheckTaken>(act.act)
           || (isAny<ItemReported>(act.act) && prefix == "qu");
}

std::vector<std::string> referencesOf(const AnyAct& act)
{
    std::vector<std::string> ids;
    const auto add = [&ids](const std::string& id) {
        if (!id.empty()) {
            ids.push_back(id);
        }
    };
    const auto addIndicator = [&](const PlacedIndicator& indicator) {
        add(indicator.product);
        add(indicator.lot);
    };
    if (const auto* const item = std::get_if<ItemAdded>(&act)) {
        add(item->packaging);
        std::ranges::for_each(item->devices, add);
        std::ranges::for_each(item->internals, addIndicator);
        if (item->external) {
            addIndicator(*item->external);
        }
    } else if (const auto* const pcd = std::get_if<PcdPlaced>(&act)) {
        std::ranges::for_each(pcd->indicators, addIndicator);
        std::ranges::for_each(pcd->vials, addIndicator);
    } else if (const auto* const sheet = std::get_if<SheetPlaced>(&act)) {
        add(sheet->product);
        add(sheet->lot);
    } else if (const auto* const control = std::get_if<ControlPrepared>(&act)) {
        add(control->product);
        add(control->lot);
        add(control->forLoad);
    } else if (const auto* const check = std::get_if<ReadingCheckTaken>(&act)) {
        for (const CheckedDrawing& each : check->drawings) {
            add(each.product);
        }
    }
    return ids;
}

bool canBeginALot(std::string_view id)
{
    const std::string_view rest = id.substr(3);
    return rest.size() <= 8 && std::ranges::all_of(rest, [](char c) {
               return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z');
           });
}

} // namespace loadwarden
