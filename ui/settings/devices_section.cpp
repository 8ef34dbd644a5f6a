#include "ui/settings/devices_section.h"

#include "core/words/say.h"
#include "core/words/say_terms.h"
#include "ui/settings/device_form.h"
#include "ui/settings/form_view.h"

namespace loadwarden::ui {
namespace {

QString cycleText(const AllowedCycle& cycle)
{
    QStringList parts{text(say(cycle.method))};
    if (cycle.airRemoval != AirRemoval::unknown) {
        parts << text(say(cycle.airRemoval));
    }
    if (cycle.temperature) {
        parts << text(sayQuantity(*cycle.temperature));
    }
    return parts.join(QStringLiteral(", "));
}

} // namespace

DevicesSection::DevicesSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Devices"),
         .belongs = tr("Sets and instruments with the cycles that their instructions for use "
                       "allow. A lead or a supervisor records them; no PIN is asked for."),
         .add = tr("Add a device"),
         .fresh = tr("New device"),
         .empty = tr("No device is recorded yet"),
         .teaches = tr("Without devices nothing says whether a load's program is one that the "
                       "maker allows. A lead or a supervisor takes the instructions for use (IFU) "
                       "of each and records every cycle that they allow.")},
        Task::DeviceRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> DevicesSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredDevice& each : registers.devices) {
        const auto& cycles = each.recorded.device.allowedCycles;
        all.push_back({text(each.id), text(each.recorded.device.name),
                       cycles.empty()       ? tr("no allowed cycle recorded")
                       : cycles.size() == 1 ? cycleText(cycles.front())
                                            : tr("%1 allowed cycles").arg(cycles.size()),
                       false});
    }
    return all;
}

EntryView* DevicesSection::makeView(const QString& id)
{
    return new FormView<DeviceForm>(workstation(), id);
}

} // namespace loadwarden::ui
