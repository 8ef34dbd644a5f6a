#include "ui/settings/specifications_section.h"

#include "ui/settings/specification_form.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

QString nameOf(const CycleSpecification& specification)
{
    return text(specification.program.empty() ? specification.id : specification.program);
}

class SpecificationView : public EntryView {
public:
    SpecificationView(const Workstation& workstation, const QString& id)
        : m_id(id.toStdString()), m_form(new SpecificationForm(workstation, m_id))
    {
        if (!m_id.empty()) {
            m_name = makeLabel({}, Type::title);
            add(m_name);
        }
        add(m_form);
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        setFocusProxy(m_form);
    }

    void show(const Registers& registers) override
    {
        m_form->show(registers);
        const auto found =
            std::ranges::find(registers.specifications, m_id, &RegisteredSpecification::id);
        if (found != registers.specifications.end()) {
            m_name->setText(nameOf(found->recorded.specification));
        }
    }

private:
    std::string m_id;
    QLabel* m_name = nullptr;
    SpecificationForm* m_form;
};

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
    return new SpecificationView(workstation(), id);
}

} // namespace loadwarden::ui
