#include "ui/settings/incubators_section.h"

#include "core/words/say.h"
#include "ui/settings/form_view.h"
#include "ui/settings/incubator_forms.h"

#include <algorithm>

namespace loadwarden::ui {
namespace {

class IncubatorView : public NamedView<IncubatorForm> {
public:
    IncubatorView(const Workstation& workstation, const QString& id)
        : NamedView<IncubatorForm>(workstation, id), m_desk(workstation.desk)
    {
        if (!isNew()) {
            m_state = makeLabel({});
            m_last = makeMuted({});
            m_out = new RangeForm(workstation, this->id(), RangeForm::Says::outOfRange);
            m_in = new RangeForm(workstation, this->id(), RangeForm::Says::inRange);
            add(m_state);
            add(m_last);
            add(m_out);
            add(m_in);
            addRule();
        }
        add(form());
    }

    void show(const Registers& registers) override
    {
        NamedView<IncubatorForm>::show(registers);
        const auto found = std::ranges::find(registers.incubators, id(), &RegisteredIncubator::id);
        if (found == registers.incubators.end()) {
            return;
        }
        const auto since = found->outSince();
        m_state->setText(since ? IncubatorsSection::tr("Out of range since %1.").arg(time(*since))
                               : IncubatorsSection::tr("In range."));
        setStyleProperty(m_state, "tone", since ? "bad" : "good");
        sayLast(*found);
        m_out->show(*found);
        m_in->show(*found);
    }

private:
    [[nodiscard]] QString time(Instant at) const { return text(sayTime(at, m_desk.style())); }

    /// The span that ended last.
    void sayLast(const RegisteredIncubator& incubator)
    {
        const auto last = std::ranges::max_element(incubator.outOfRange, {}, &OutOfRange::to);
        const bool isAny = last != incubator.outOfRange.end() && last->to;
        m_last->setVisible(isAny);
        m_last->setText(isAny ? IncubatorsSection::tr("It was out of range last from %1 to %2.")
                                    .arg(time(last->from), time(*last->to))
                              : QString());
    }

    DeskLink& m_desk;
    QLabel* m_state = nullptr;
    QLabel* m_last = nullptr;
    RangeForm* m_out = nullptr;
    RangeForm* m_in = nullptr;
};

} // namespace

IncubatorsSection::IncubatorsSection(const Workstation& workstation)
    : RegisterSection(
        workstation,
        {.title = tr("Incubators"),
         .belongs = tr("Where vials are incubated. A lead or a supervisor records incubators, an "
                       "operator whether they are in range; no PIN is asked for."),
         .add = tr("Add an incubator"),
         .fresh = tr("New incubator"),
         .empty = tr("No incubator is recorded yet"),
         .teaches = tr("Without incubators nothing says where a vial was and whether that was in "
                       "range. A lead or a supervisor records each under its name.")},
        Task::IncubatorRecorded)
{
    lookAtRights();
}

std::vector<RegisterLine> IncubatorsSection::lines(const Registers& registers) const
{
    std::vector<RegisterLine> all;
    for (const RegisteredIncubator& each : registers.incubators) {
        all.push_back({text(each.id), text(each.recorded.name),
                       each.outSince() ? tr("out of range") : tr("in range"), false});
    }
    return all;
}

EntryView* IncubatorsSection::makeView(const QString& id)
{
    return new IncubatorView(workstation(), id);
}

} // namespace loadwarden::ui
