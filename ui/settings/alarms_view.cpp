#include "ui/settings/alarms_view.h"

#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/parts/clear_layout.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace loadwarden::ui {

AlarmsView::AlarmsView()
    : m_none(makeMuted(tr("No alarm of it is classed."))), m_rows(new QGridLayout)
{
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(tr("Its alarms"), Type::heading));
    column->addWidget(makeMuted(
        tr("As a supervisor classed them by its instructions for use; they are classed by command "
           "line.")));
    m_rows->setHorizontalSpacing(space::large);
    m_rows->setVerticalSpacing(space::small);
    m_rows->setColumnStretch(1, 1);
    column->addLayout(m_rows);
    column->addWidget(m_none);
}

void AlarmsView::show(const std::vector<ListedAlarm>& alarms)
{
    clearLayout(m_rows);
    int row = 0;
    for (const ListedAlarm& each : alarms) {
        m_rows->addWidget(makeLabel(text(each.code), Type::strong, false), row, 0);
        auto* const effect = makeLabel(text(say(each.effect)));
        effect->setProperty("tone", each.effect == AlarmEffect::harmless ? "muted" : "bad");
        m_rows->addWidget(effect, row++, 1);
    }
    m_none->setVisible(alarms.empty());
}

} // namespace loadwarden::ui
