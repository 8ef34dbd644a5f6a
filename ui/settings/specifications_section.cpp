#include "ui/settings/specifications_section.h"

#include "ui/settings/form_view.h"
#include "ui/settings/specification_form.h"

namespace loadwarden::ui {
namespace {

QString nameOf(const CycleSpecification& specification)
{
    return text(specification.program.empty() ? specification.id : specification.program);
}

} // namespace

SpecificationsSection::SpecificationsSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Specifications"),
         .belongs = tr("The programs that the sterilizers run, and the limits by which the record "
                       "of each is judged. A load keeps the revision with which it began."),
         .add = tr("Add a program"),
         .fresh = tr("New program"),
         .empty = tr("No program is specified yet"),
         .teaches = tr("Without the limits of its program nothing judges a load's printout. A "
                       "supervisor takes a copy of a template for each program of a sterilizer, "
                       "and compares its numbers with the maker's instructions.")},
        Task::SpecificationRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> SpecificationsSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredSpecification& each : registers.specifications) {
        const CycleSpecification& specification = each.recorded.specification;
        all.push_back(
            {text(each.id), nameOf(specification),
             tr("%1; revision %2")
                 .arg(specificationText(specification), QString::number(specification.revision)),
             false});
    }
    return all;
}

EntryView* SpecificationsSection::makeView(const QString& id)
{
    return new FormView<SpecificationForm>(workstation(), id);
}

} // namespace loadwarden::ui
