#include "ui/settings/sterilizers_section.h"

#include "core/words/say_terms.h"
#include "ui/parts/clock_text.h"
#include "ui/settings/service_forms.h"
#include "ui/settings/sterilizer_form.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

QString serviceText(const ServiceNow& service)
{
    if (service.state == ServiceState::inService) {
        return SterilizersSection::tr("In service.");
    }
    if (service.why.empty()) {
        return SterilizersSection::tr("Not in service: it was never returned to it. A supervisor "
                                      "says that it is qualified.");
    }
    return SterilizersSection::tr("Not in service (%1): %2")
        .arg(text(say(service.state)), text(service.why));
}

class SterilizerView : public EntryView {
public:
    SterilizerView(const Workstation& workstation, const QString& id) : m_id(id.toStdString())
    {
        if (!m_id.empty()) {
            m_name = makeLabel({}, Type::title);
            m_service = makeLabel({});
            add(m_name);
            add(m_service);
        }
        m_form = new SterilizerForm(workstation, m_id);
        add(m_form);
        connect(m_form, &RegisterForm::recorded, this, &EntryView::recorded);
        if (!m_id.empty()) {
            m_takeOut = new TakeOutForm(workstation, m_id);
            m_return = new ReturnForm(workstation, m_id);
            m_clock = new ClockForm(workstation, m_id);
            addRule();
            add(m_takeOut);
            add(m_return);
            addRule();
            add(m_clock);
        }
        setFocusProxy(m_form);
    }

    void show(const Registers& registers) override
    {
        m_form->show(registers);
        const auto found =
            std::ranges::find(registers.sterilizers, m_id, &RegisteredSterilizer::id);
        if (found == registers.sterilizers.end()) {
            return;
        }
        m_name->setText(text(found->recorded.name));
        m_service->setText(serviceText(found->service));
        setStyleProperty(m_service, "tone",
                         found->service.state == ServiceState::inService ? "good" : "waiting");
        m_takeOut->show(*found);
        m_return->show(*found);
        m_clock->show(*found);
    }

private:
    std::string m_id;
    QLabel* m_name = nullptr;
    QLabel* m_service = nullptr;
    TakeOutForm* m_takeOut = nullptr;
    ReturnForm* m_return = nullptr;
    SterilizerForm* m_form = nullptr;
    ClockForm* m_clock = nullptr;
};

} // namespace

SterilizersSection::SterilizersSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Sterilizers"),
         .belongs =
             tr("What they are called, whether they are in service, when their test period "
                "begins and how their clocks go. What they run stands under Specifications."),
         .add = tr("Add a sterilizer"),
         .fresh = tr("New sterilizer"),
         .empty = tr("No sterilizer is recorded yet"),
         .teaches = tr("A supervisor records each sterilizer as its printout names it, says when "
                       "its test period begins, and returns it to service once it is "
                       "qualified.")},
        Task::SterilizerRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> SterilizersSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredSterilizer& each : registers.sterilizers) {
        const bool isIn = each.service.state == ServiceState::inService;
        const QString period = tr("test period from %1").arg(minuteText(each.recorded.testMinute));
        all.push_back({text(each.id), text(each.recorded.name),
                       isIn ? period : tr("not in service; %1").arg(period), false});
    }
    return all;
}

EntryView* SterilizersSection::makeView(const QString& id)
{
    return new SterilizerView(workstation(), id);
}

} // namespace loadwarden::ui
