#include "ui/trace/trace_explorer.h"

#include "core/words/say_trace_found.h"
#include "ui/look/text.h"
#include "ui/trace/power_text.h"
#include "ui/trace/slide_field.h"
#include "ui/trace/survivor_chart.h"
#include "ui/trace/trace_facts_germs.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {
namespace {

constexpr double reference = 121.1; ///< degrees Celsius, of both D values

} // namespace

Explored explore(double celsius, double minutes, const Population& spores, const Population& unit)
{
    Explored found;
    found.minutes = minutes * lethalRate(celsius, spores.reference);
    found.spores = inactivate(spores, found.minutes);
    found.window = resistanceWindow(spores.count, spores.dMinutes);
    found.unit = inactivate(unit, minutes * lethalRate(celsius, unit.reference));
    return found;
}

TraceExplorer::TraceExplorer(Look& look, QWidget* parent)
    : QWidget(parent),
      m_celsius(new SlideField(tr("&Temperature of the steam"), tr("°C"), {110, 140, 1}, 121.1)),
      m_minutes(new SlideField(tr("T&ime held"), tr("min"), {0, 60, 1}, 15)),
      m_spores(new SlideField(tr("&Spores at first, N0"), {}, {1e3, 1e7, 0, true}, 1e6)),
      m_sporesD(new SlideField(tr("Spores: &D at 121.1 °C"), tr("min"), {0.5, 5, 2}, 1.5)),
      m_z(new SlideField(tr("&z of both"), tr("K"), {6, 15, 1}, 10)),
      m_unit(new SlideField(tr("&Germs of a unit at first"), {}, {1, 1e6, 0, true}, 100)),
      m_unitD(new SlideField(tr("Germs: D &at 121.1 °C"), tr("min"), {0.1, 5, 2}, 1)),
      m_chart(new SurvivorChart(look))
{
    auto* const column = new QVBoxLayout(this);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Explore lethality"), Type::heading));
    column->addWidget(makeMuted(tr("To learn with; nothing here is of a load. Every figure is by "
                                   "the log-linear model, for saturated steam that reaches the "
                                   "germs at this temperature at once.")));
    auto* const sides = new QGridLayout;
    sides->setHorizontalSpacing(space::large);
    sides->setColumnStretch(0, 4);
    sides->setColumnStretch(1, 5);
    auto* const left = new QVBoxLayout;
    left->setSpacing(0);
    for (SlideField* const field :
         {m_celsius, m_minutes, m_spores, m_sporesD, m_z, m_unit, m_unitD}) {
        left->addWidget(field);
        connect(field, &SlideField::edited, this, &TraceExplorer::answer);
    }
    left->addStretch();
    sides->addLayout(left, 0, 0);

    auto* const right = new QVBoxLayout;
    right->setSpacing(space::small);
    right->addWidget(m_chart, 1);
    auto* const grid = new QGridLayout;
    grid->setHorizontalSpacing(space::medium);
    grid->setVerticalSpacing(space::hair);
    grid->setColumnStretch(1, 1);
    m_worth = addAnswer(grid, tr("Worth at 121.1 °C"));
    m_reduction = addAnswer(grid, tr("Spores: log reduction"));
    m_survivors = addAnswer(grid, tr("Spores: expected survivors"));
    m_grows = addAnswer(grid, tr("Chance that the indicator grows"));
    m_window = addAnswer(grid, tr("By N0 and D at 121.1 °C"));
    m_unitReduction = addAnswer(grid, tr("Unit: log reduction"));
    m_notSterile = addAnswer(grid, tr("Probability that a unit is not sterile"));
    right->addLayout(grid);
    m_says = makeLabel({});
    right->addWidget(m_says);
    right->addWidget(makeMuted(text(say(Caveat::chamberIsNotPack))));
    right->addStretch();
    sides->addLayout(right, 0, 1);
    column->addLayout(sides);
    answer();
}

QLabel* TraceExplorer::addAnswer(QGridLayout* grid, const QString& name)
{
    const int row = grid->rowCount();
    QLabel* const value = makeLabel({}, Type::strong);
    grid->addWidget(makeLabel(name, Type::body, false), row, 0, Qt::AlignTop);
    grid->addWidget(value, row, 1);
    return value;
}

Explored TraceExplorer::explored() const
{
    const LethalReference at{reference, m_z->value()};
    return explore(m_celsius->value(), m_minutes->value(),
                   {m_spores->value(), m_sporesD->value(), at},
                   {m_unit->value(), m_unitD->value(), at});
}

void TraceExplorer::answer()
{
    const Explored found = explored();
    const LethalReference at{reference, m_z->value()};
    m_worth->setText(tr("%1 min").arg(powerText(found.minutes)));
    m_reduction->setText(powerText(found.spores.logReduction));
    m_survivors->setText(powerText(found.spores.survivors));
    m_grows->setText(chanceText(found.spores.chanceOfAny));
    m_window->setText(tr("it survives at least %1 min, and is killed within %2 min")
                          .arg(text(sayNumber(found.window.survivalMinutes, 1)),
                               text(sayNumber(found.window.killMinutes, 1))));
    m_unitReduction->setText(powerText(found.unit.logReduction));
    m_notSterile->setText(chanceText(found.unit.chanceOfAny));
    constexpr double likely = 0.5;
    const QString outcome = found.spores.chanceOfAny > likely
                                ? tr("Here the indicator more likely grows than not.")
                                : tr("Here the indicator is more likely negative than not.");
    m_says->setText(outcome + u' ' + negativeShows() + u' ' + negativeDoesNotShow());
    m_chart->show(m_minutes->value(), lethalRate(m_celsius->value(), at),
                  {m_spores->value(), m_sporesD->value(), at},
                  {m_unit->value(), m_unitD->value(), at});
}

} // namespace loadwarden::ui
