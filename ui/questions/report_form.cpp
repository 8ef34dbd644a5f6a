#include "ui/questions/report_form.h"

#include "core/desk/floor.h"
#include "core/desk/recorder.h"
#include "core/words/say_refusal.h"
#include "core/words/say_terms.h"
#include "ui/look/text.h"
#include "ui/parts/combo.h"
#include "ui/parts/field.h"
#include "ui/parts/flow_layout.h"
#include "ui/questions/floor_places.h"
#include "ui/shell/desk_link.h"
#include "ui/shell/session.h"

#include <QCheckBox>
#include <QComboBox>
#include <QCompleter>
#include <QHBoxLayout>
#include <QLineEdit>
#include <QVBoxLayout>

#include <array>
#include <utility>

namespace loadwarden::ui {
namespace {

constexpr int mostOfName = 64;
constexpr int mostOfNote = 2000;

/// What an indicator inside can show that is no pass, as somebody says it at the telephone.
constexpr std::array notPassing = {Seen::frontShortOfBoundary, Seen::frontOnBoundary,
                                   Seen::endColourPartly, Seen::unchanged, Seen::absent};
constexpr std::array allFaults = {PackageFault::wet, PackageFault::torn, PackageFault::unsealed,
                                  PackageFault::labelDiffers};

QLineEdit* makeLine(const QString& typed, int most)
{
    auto* const line = new QLineEdit(typed);
    line->setMaxLength(most);
    return line;
}

} // namespace

ReportForm::ReportForm(Workstation& workstation, const TraySheet& tray, FloorPlaces& places,
                       QWidget* parent)
    : QFrame(parent),
      m_workstation(workstation),
      m_item(tray.item),
      m_cycle(tray.cycle),
      m_label(text(tray.label)),
      m_places(places),
      m_indicator(makeCombo({tr("passes, or not looked at")})),
      m_place(makeLine(places.last(), mostOfName)),
      m_placeField(new Field(tr("W&here it was found"), m_place, tr("a room or a ward"))),
      m_by(makeLine(places.lastBy(), mostOfName)),
      m_note(makeLine({}, mostOfNote))
{
    setObjectName(QStringLiteral("reading"));
    auto* const column = new QVBoxLayout(this);
    column->setContentsMargins(space::medium, space::medium, space::medium, space::medium);
    column->setSpacing(space::small);
    column->addWidget(
        makeLabel(tr("What was found on opening %1, of load %2").arg(m_label, text(tray.lot)),
                  Type::heading));
    for (const Seen seen : notPassing) {
        m_indicator->addItem(text(say(seen)));
    }
    m_found = new Field(tr("In&dicator inside"), m_indicator,
                        tr("whoever is not sure names what it would be at the worst"));
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
    auto* const who = new QHBoxLayout;
    who->setSpacing(space::medium);
    auto* const known = new QCompleter(places.all(), m_place);
    known->setCaseSensitivity(Qt::CaseInsensitive);
    m_place->setCompleter(known);
    who->addWidget(m_placeField, 1);
    who->addWidget(new Field(tr("Reported b&y"), m_by, tr("by what they do there; no patient")), 1);
    column->addLayout(who);
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
                        .place = m_place->text().trimmed().toStdString(),
                        .by = m_by->text().trimmed().toStdString(),
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
    m_placeField->setError(found.place.empty() ? tr("Say where it was found.") : QString());
    if (isNothing || found.place.empty()) {
        (isNothing ? static_cast<QWidget*>(m_indicator) : m_place)->setFocus();
        return;
    }
    if (std::exchange(m_isRecording, true)) {
        return;
    }
    m_workstation.desk.record(
        this,
        [who = *m_workstation.session.who(), found, item = m_item,
         cycle = m_cycle](Office& office) {
            const ToRecord act = loadwarden::reported(
                office.place().ids, office.zone().dateOf(office.now()), found, item, cycle);
            return Recorder(office).record(who, act);
        },
        [this, place = text(found.place), by = text(found.by)](const OrRefusal<Appended>& answer) {
            m_isRecording = false;
            if (const auto* const refusal = std::get_if<Refusal>(&answer)) {
                const Told said = say(*refusal, m_workstation.desk.style());
                emit says(text(said.says), text(said.next));
                return;
            }
            m_places.remember(place, by);
            emit says(
                tr("The report on %1 is recorded, and its load is decided anew.").arg(m_label),
                tr("Hold what of this load is still here, and tell the lead."));
            emit reported();
        },
        [this] { m_isRecording = false; });
}

} // namespace loadwarden::ui
