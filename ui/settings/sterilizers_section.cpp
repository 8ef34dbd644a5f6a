#include "ui/settings/sterilizers_section.h"

#include "core/words/say_terms.h"
#include "ui/parts/clock_text.h"
#include "ui/settings/alarms_view.h"
#include "ui/settings/form_view.h"
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

class SterilizerView : public NamedView<SterilizerForm> {
public:
    SterilizerView(const Workstation& workstation, const QString& id)
        : NamedView<SterilizerForm>(workstation, id)
    {
        if (isNew()) {
            add(form());
            return;
        }
        m_service = makeLabel({});
        m_takeOut = new TakeOutForm(workstation, this->id());
        m_return = new ReturnForm(workstation, this->id());
        m_clock = new ClockForm(workstation, this->id());
        m_alarms = new AlarmsView;
        add(m_service);
        add(form());
        addRule();
        add(m_takeOut);
        add(m_return);
        addRule();
        add(m_clock);
        addRule();
        add(m_alarms);
    }

    void show(const Registers& registers) override
    {
        NamedView<SterilizerForm>::show(registers);
        const auto found =
            std::ranges::find(registers.sterilizers, id(), &RegisteredSterilizer::id);
        if (found == registers.sterilizers.end()) {
            return;
        }
        m_service->setText(serviceText(found->service));
        setStyleProperty(m_service, "tone",
                         found->service.state == ServiceState::inService ? "good" : "waiting");
        m_takeOut->show(*found);
        m_return->show(*found);
        m_clock->show(*found);
        m_alarms->show(found->alarms);
    }

private:
    QLabel* m_service = nullptr;
    TakeOutForm* m_takeOut = nullptr;
    ReturnForm* m_return = nullptr;
    ClockForm* m_clock = nullptr;
    AlarmsView* m_alarms = nullptr;
};

} // namespace

SterilizersSection::SterilizersSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Sterilizers"),
         .belongs = tr("Their names, service, test periods, clocks and alarms. What they run "
                       "stands under Specifications."),
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
