#include "ui/settings/packagings_section.h"

#include "core/words/say_terms.h"
#include "ui/settings/form_view.h"
#include "ui/settings/packaging_form.h"
#include "ui/settings/product_text.h"

namespace loadwarden::ui {

PackagingsSection::PackagingsSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Packagings"),
         .belongs = tr("Wraps, pouches, containers and trays by their instructions for use. A lead "
                       "or a supervisor records them; no PIN is asked for."),
         .add = tr("Add a packaging"),
         .fresh = tr("New packaging"),
         .empty = tr("No packaging is recorded yet"),
         .teaches = tr("Without packagings nothing says whether a package is made for the method "
                       "of its load. A lead or a supervisor takes the instructions for use (IFU) "
                       "of each and records what they say.")},
        Task::PackagingRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> PackagingsSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredPackaging& each : registers.packagings) {
        const Packaging& packaging = each.recorded.packaging;
        all.push_back({text(each.id), text(each.recorded.name),
                       packaging.methods.empty()
                           ? tr("%1; no method stated").arg(text(say(packaging.form)))
                           : tr("%1; %2", "a form, methods")
                                 .arg(text(say(packaging.form)), methodsText(packaging.methods)),
                       false});
    }
    return all;
}

EntryView* PackagingsSection::makeView(const QString& id)
{
    return new FormView<PackagingForm>(workstation(), id);
}

} // namespace loadwarden::ui
