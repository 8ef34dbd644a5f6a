#include "ui/questions/report_form.h"

#include "core/desk/floor.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"
#include "ui/questions/floor_desk.h"
#include "ui/questions/floor_from.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QPointer>
#include <QPushButton>
#include <QVBoxLayout>

#include <array>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int mostOfNote = 2000;

/// What an indicator inside can show that is no pass, as somebody says it at the telephone.
constexpr std::array notPassing = {Seen::frontShortOfBoundary, Seen::frontOnBoundary,
                                   Seen::endColourPartly, Seen::unchanged, Seen::absent};
constexpr std::array allFaults = {PackageFault::wet, PackageFault::torn, PackageFault::unsealed,
                                  PackageFault::labelDiffers};

} // namespace

ReportForm::ReportForm(FloorDesk& desk, const TraySheet& tray, QWidget* parent)
    : QFrame(parent),
      m_desk(desk),
      m_tray(tray),
      m_indicator(makeCombo({tr("passes, or not looked at")})),
      m_found(new Field(tr("In&dicator inside"), m_indicator,
                        tr("whoever is not sure names what it would be at the worst"))),
      m_from(new FloorFrom(desk, tr("W&here it was found"), tr("Reported b&y"))),
      m_note(new QLineEdit)
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    column->setSpacing(space::small);
    column->addWidget(makeLabel(
        tr("What was found on opening %1, of load %2").arg(text(tray.label), text(tray.lot)),
        Type::heading));
    for (const Seen seen : notPassing) {
        m_indicator->addItem(text(say(seen)));
    }
    column->addWidget(m_found);
    column->addWidget(makeLabel(tr("Package"), Type::strong));
    auto* const faults = new FlowLayout;
    faults->setSpacing(space::medium);
    for (const PackageFault fault : allFaults) {
        auto* const box = new QCheckBox(text(say(fault)));
        box->setAccessibleName(tr("Package: %1").arg(box->text()));
        m_faults.push_back(box);
        faults->addWidget(box);
    }
    column->addLayout(faults);
    column->addWidget(m_from);
    m_note->setMaxLength(mostOfNote);
    column->addWidget(new Field(tr("N&ote"), m_note));
    auto* const buttons = new FlowLayout;
    buttons->setSpacing(space::small);
    auto* const go = makeButton(tr("Re&cord the report"), ButtonKind::main);
    auto* const leave = makeButton(tr("Leave the report"));
    buttons->addWidget(go);
    buttons->addWidget(leave);
    column->addLayout(buttons);
    connect(go, &QPushButton::clicked, this, &ReportForm::record);
    connect(m_note, &QLineEdit::returnPressed, this, &ReportForm::record);
    connect(m_from, &FloorFrom::entered, this, &ReportForm::record);
    connect(leave, &QPushButton::clicked, this, &ReportForm::left);
}

void ReportForm::focusFirst()
{
    m_indicator->setFocus(Qt::OtherFocusReason);
}

ItemReported ReportForm::report() const
{
    ItemReported report{.indicator = {},
                        .faults = {},
                        .place = m_from->place().toStdString(),
                        .by = m_from->by().toStdString(),
                        .note = m_note->text().trimmed().toStdString()};
    if (const int chosen = m_indicator->currentIndex(); chosen > 0) {
        report.indicator = notPassing.at(static_cast<std::size_t>(chosen - 1));
    }
    for (std::size_t i = 0; i < m_faults.size(); ++i) {
        if (m_faults[i]->isChecked()) {
            report.faults.push_back(allFaults.at(i));
        }
    }
    return report;
}

void ReportForm::record()
{
    const ItemReported found = report();
    const bool isNothing = !found.indicator && found.faults.empty();
    m_found->setError(isNothing ? tr("Say what was found: an indicator that does not pass, or what "
                                     "is wrong with the package.")
                                : QString());
    m_from->setPlaceError(found.place.empty() ? tr("Say where it was found.") : QString());
    if (isNothing) {
        focusFirst();
        return;
    }
    if (found.place.empty()) {
        m_from->focusPlace();
        return;
    }
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    m_desk.record(
        [found, item = m_tray.item, cycle = m_tray.cycle](IdSource& ids, Date day) {
            return loadwarden::reported(ids, day, found, item, cycle);
        },
        m_from->place(), m_from->by(),
        tr("The report on %1 is recorded, and its load is decided anew.").arg(text(m_tray.label)),
        tr("Hold what of this load is still here, and tell the lead."),
        [self = QPointer(this)](bool isDone) {
            if (self) {
                self->m_isRecording = false;
                if (isDone) {
                    emit self->reported();
                }
            }
        });
}

} // namespace loadwarden::ui
