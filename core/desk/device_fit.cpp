#include "core/desk/device_fit.h"

#include "core/desk/planned_program.h"
#include "core/release/assemble.h"
#include "core/release/decide.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loadwarden {
namespace {

std::vector<Finding> misfitsIn(const LoadSheet& sheet, std::vector<Item> items)
{
    const CycleSpecification* const program = plannedProgram(sheet);
    if (program == nullptr || items.empty() || sheet.view().isTest() || sheet.view().isImported()) {
        return {};
    }
    EvidenceRecord record = sheet.view().folded.record;
    record.specification = *program;
    record.load.items = std::move(items);
    if (record.sterilizer) {
        record.sterilizer->cycles.clear(); // what it ran before says nothing of this
    }
    std::vector<Finding> found;
    std::ranges::copy_if(
        decide(assemble(std::move(record)), sheet.view().policy, sheet.view().now).findings,
        std::back_inserter(found), [](const Finding& finding) {
            return finding.key == Key::itemCycleNotAllowed
                   || finding.key == Key::itemCycleValueMissing;
        });
    return found;
}

} // namespace

std::vector<Finding> misfitsOf(const LoadSheet& sheet)
{
    return misfitsIn(sheet, sheet.view().folded.record.load.items);
}

std::vector<Finding> misfitsOf(const LoadSheet& sheet, const std::vector<Device>& devices)
{
    if (devices.empty()) {
        return {};
    }
    Item item;
    item.devices = devices;
    return misfitsIn(sheet, {std::move(item)});
}

} // namespace loadwarden
